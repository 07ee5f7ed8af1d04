//! The transition rules of a week: what of it may still be changed in which phase.

use messages::{Message, seasons};

use super::SeasonState;
use super::phase::{WeekFacts, WeekPhase};
use crate::time::Instant;

/// What of a week is to be changed; what is absent stays.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct WeekChange {
    /// Something that the announcement tells: its own time, the cap, the version of the catalogue.
    pub announced: bool,
    /// The new deadline of the lists.
    pub lists_due: Option<Instant>,
    /// The new end of play.
    pub play_until: Option<Instant>,
    pub nights: bool,
}

/// Why a week may not be changed so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WeekChangeFault {
    /// What the announcement told is fixed.
    Announced,
    /// The deadline has passed, or would come sooner. Holds the deadline as it is.
    Deadline(Instant),
    /// The week is paired.
    Nights,
    /// The week is paired and the end of play would come sooner, or the week is closed.
    PlayUntil,
}

impl WeekChangeFault {
    pub fn message(&self) -> Message {
        match self {
            Self::Announced => seasons::week_announced(),
            Self::Deadline(_) => seasons::deadline_immutable(),
            Self::Nights => seasons::nights_fixed(),
            Self::PlayUntil => seasons::play_until_fixed(),
        }
    }
}

/// Whether a week of a season may be changed so at `now`. A draft may change in any way. Afterwards what
/// was announced stays, a deadline moves only to later and only before it has passed, and from the
/// pairing on nights stay and the end of play moves only to later.
///
/// # Errors
/// The first [`WeekChangeFault`].
pub fn check_week_change(
    season: SeasonState,
    week: &WeekFacts,
    change: &WeekChange,
    now: Instant,
) -> Result<(), WeekChangeFault> {
    if season == SeasonState::Draft {
        return Ok(());
    }
    if change.announced && week.phase(now) >= WeekPhase::Announced {
        return Err(WeekChangeFault::Announced);
    }
    let has_passed = week.lists_are_due(now);
    if change
        .lists_due
        .is_some_and(|due| has_passed || due < week.lists_due_at)
    {
        return Err(WeekChangeFault::Deadline(week.lists_due_at));
    }
    if week.paired_at.is_none() {
        return Ok(());
    }
    if change.nights {
        return Err(WeekChangeFault::Nights);
    }
    let is_closed = week.closed_at.is_some();
    if change
        .play_until
        .is_some_and(|until| is_closed || until < week.play_until_at)
    {
        return Err(WeekChangeFault::PlayUntil);
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use chrono::Duration;

    use super::*;
    use crate::season::samples::week_due;

    fn due() -> Instant {
        "2026-01-12T20:00:00Z".parse().unwrap()
    }

    fn until() -> Instant {
        due() + Duration::days(5)
    }

    /// A week in each phase, in order, and the instant at which it is looked at.
    fn phases() -> [(WeekFacts, Instant); 6] {
        let planned = week_due(due());
        let end = planned.accepted_until();
        let opened = WeekFacts {
            lists_opened_at: Some(end),
            ..planned
        };
        let paired = WeekFacts {
            paired_at: Some(end),
            ..opened
        };
        let closed = WeekFacts {
            closed_at: Some(until()),
            ..paired
        };
        [
            (planned, planned.announce_at - Duration::seconds(1)),
            (planned, end - Duration::microseconds(1)),
            (planned, end),
            (opened, end),
            (paired, end),
            (closed, until()),
        ]
    }

    fn in_each_phase(change: WeekChange) -> [Option<WeekChangeFault>; 6] {
        let check = |(week, now): (WeekFacts, Instant)| {
            check_week_change(SeasonState::Started, &week, &change, now).err()
        };
        phases().map(check)
    }

    /// A fault in the last phases, and none before.
    fn from_phase(first: usize, fault: WeekChangeFault) -> [Option<WeekChangeFault>; 6] {
        std::array::from_fn(|phase| (phase >= first).then_some(fault))
    }

    const NOTHING: WeekChange = WeekChange {
        announced: false,
        lists_due: None,
        play_until: None,
        nights: false,
    };

    #[test]
    fn the_weeks_lie_in_each_phase() {
        assert_eq!(
            phases().map(|(week, now)| week.phase(now)),
            [
                WeekPhase::Planned,
                WeekPhase::Announced,
                WeekPhase::ListsDue,
                WeekPhase::ListsOpened,
                WeekPhase::Paired,
                WeekPhase::Closed,
            ]
        );
        assert_eq!(in_each_phase(NOTHING), [None; 6]);
    }

    #[test]
    fn what_is_announced_stays() {
        let change = WeekChange {
            announced: true,
            ..NOTHING
        };
        let expected = from_phase(1, WeekChangeFault::Announced);
        assert_eq!(in_each_phase(change), expected);
    }

    #[test]
    fn a_deadline_moves_only_to_later_and_only_until_its_grace_is_over() {
        let move_by = |minutes| WeekChange {
            lists_due: Some(due() + Duration::minutes(minutes)),
            ..NOTHING
        };
        let fault = WeekChangeFault::Deadline(due());
        for later in [0, 30] {
            assert_eq!(in_each_phase(move_by(later)), from_phase(2, fault));
        }
        assert_eq!(in_each_phase(move_by(-1)), from_phase(0, fault));
    }

    #[test]
    fn nights_stay_once_the_week_is_paired() {
        let change = WeekChange {
            nights: true,
            ..NOTHING
        };
        assert_eq!(
            in_each_phase(change),
            from_phase(4, WeekChangeFault::Nights)
        );
    }

    #[test]
    fn the_end_of_play_moves_only_to_later_once_paired_and_not_at_all_once_closed() {
        let move_by = |minutes| WeekChange {
            play_until: Some(until() + Duration::minutes(minutes)),
            ..NOTHING
        };
        let fault = WeekChangeFault::PlayUntil;
        assert_eq!(in_each_phase(move_by(1)), from_phase(5, fault));
        assert_eq!(in_each_phase(move_by(-1)), from_phase(4, fault));
    }

    #[test]
    fn a_draft_may_change_in_any_way() {
        let change = WeekChange {
            announced: true,
            lists_due: Some(due() - Duration::days(1)),
            play_until: Some(until() - Duration::days(1)),
            nights: true,
        };
        for (week, now) in phases() {
            let changed = check_week_change(SeasonState::Draft, &week, &change, now);
            assert_eq!(changed, Ok(()));
        }
    }
}
