//! Reveals: what may be known of a scenario, and from when.

use super::phase::WeekFacts;
use crate::time::Instant;

/// When a part of a scenario is revealed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RevealTime {
    /// With the week's announcement.
    Announcement,
    /// At an instant of its own.
    At(Instant),
    /// When the lists are opened: a committed act, so that no late list can follow the reveal.
    ListsOpened,
}

impl RevealTime {
    /// When the clock alone reveals it, if it does.
    pub fn instant(self) -> Option<Instant> {
        match self {
            Self::At(instant) => Some(instant),
            Self::Announcement | Self::ListsOpened => None,
        }
    }
}

/// Whether an instant has come by `now` and had not come at `since`.
pub fn has_come_since(at: Instant, since: Option<Instant>, now: Instant) -> bool {
    at <= now && since.is_none_or(|since| at > since)
}

/// The first of these instants that is still to come.
pub fn next_to_come(instants: impl IntoIterator<Item = Instant>, now: Instant) -> Option<Instant> {
    let instants = instants.into_iter();
    instants.filter(|&instant| instant > now).min()
}

/// How much of a scenario may be known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Revealed {
    /// Not even its title.
    Nothing,
    Title,
    Full,
}

/// What everybody may know of a week's scenario at `now`.
pub fn revealed_at(
    title: RevealTime,
    full: RevealTime,
    week: &WeekFacts,
    now: Instant,
) -> Revealed {
    let has_come = |reveal: RevealTime| match reveal {
        RevealTime::Announcement => now >= week.announce_at,
        RevealTime::At(instant) => now >= instant,
        RevealTime::ListsOpened => week.lists_opened_at.is_some(),
    };
    if has_come(full) {
        Revealed::Full
    } else if has_come(title) {
        Revealed::Title
    } else {
        Revealed::Nothing
    }
}

#[cfg(test)]
mod tests {
    use chrono::Duration;

    use super::*;
    use crate::season::samples::week_due;

    #[test]
    fn an_instant_comes_once() {
        let now: Instant = "2026-10-13T20:00:00Z".parse().unwrap();
        let [before, after] = [now - Duration::seconds(1), now + Duration::seconds(1)];
        assert!(has_come_since(now, None, now));
        assert!(has_come_since(now, Some(before), now));
        assert!(!has_come_since(before, Some(before), now));
        assert!(!has_come_since(after, None, now));
        assert_eq!(next_to_come([before, now, after], now), Some(after));
        assert_eq!(next_to_come([now], now), None);
    }

    #[test]
    fn hidden_until_the_lists_are_opened_means_until_that_is_committed() {
        let due: Instant = "2026-10-13T20:00:00Z".parse().unwrap();
        let week = WeekFacts {
            announce_at: due - Duration::days(3),
            ..week_due(due)
        };
        let see = |week: &WeekFacts, now| {
            revealed_at(RevealTime::Announcement, RevealTime::ListsOpened, week, now)
        };
        assert_eq!(see(&week, due - Duration::days(4)), Revealed::Nothing);
        assert_eq!(see(&week, due - Duration::days(1)), Revealed::Title);
        assert_eq!(see(&week, due + Duration::hours(1)), Revealed::Title);
        let opened = WeekFacts {
            lists_opened_at: Some(due),
            ..week
        };
        assert_eq!(see(&opened, due), Revealed::Full);
    }
}
