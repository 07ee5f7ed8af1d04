//! The deadline of lists: the one place that decides whether a list is in time.

use chrono::Duration;

use super::phase::WeekFacts;
use crate::time::Instant;

/// How a list came in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ListArrival {
    /// Before the deadline and its grace were over.
    OnTime,
    /// After it, with the organiser's leave; whole minutes since the grace ended, rounded down.
    Late { minutes: u32 },
}

/// Why a list is not accepted at this instant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ListNotAccepted {
    /// The week is not announced yet.
    NotAnnounced,
    /// The deadline is over, and nobody gave leave. Holds the end of the grace.
    DeadlinePassed(Instant),
    /// The week is closed.
    Closed,
}

/// Judges a list that came in at `received`, read from the clock **after** the week was locked.
///
/// In time means strictly before the deadline and its grace are over: at 21:00:00 for a deadline of
/// 20:00 with an hour of grace a list is late, a microsecond earlier it is not. Once the lists are
/// opened, only leave helps, whatever the clock says.
///
/// # Errors
/// [`ListNotAccepted`].
pub fn accept_list(
    week: &WeekFacts,
    received: Instant,
    has_leave: bool,
) -> Result<ListArrival, ListNotAccepted> {
    if week.closed_at.is_some() {
        return Err(ListNotAccepted::Closed);
    }
    if received < week.announce_at {
        return Err(ListNotAccepted::NotAnnounced);
    }
    if !week.needs_leave(received) {
        return Ok(ListArrival::OnTime);
    }
    let end = week.accepted_until();
    if !has_leave {
        return Err(ListNotAccepted::DeadlinePassed(end));
    }
    let late = (received - end).max(Duration::zero());
    Ok(ListArrival::Late {
        minutes: u32::try_from(late.num_minutes()).unwrap_or(u32::MAX),
    })
}

/// Whether the list of somebody who has withdrawn at `left_at`, if at all, was opened with the others at
/// `opened_at`. Nobody plays against the list of somebody who had withdrawn by then: it stays sealed.
pub fn is_list_opened(left_at: Option<Instant>, opened_at: Instant) -> bool {
    left_at.is_none_or(|left| left >= opened_at)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_list_of_whoever_withdrew_before_the_opening_stays_sealed() {
        let opened = at("2026-10-13T21:00:00Z");
        assert!(is_list_opened(None, opened));
        assert!(is_list_opened(Some(opened), opened));
        let before = opened - Duration::microseconds(1);
        assert!(!is_list_opened(Some(before), opened));
    }

    fn at(text: &str) -> Instant {
        text.parse().unwrap()
    }

    fn week() -> WeekFacts {
        WeekFacts {
            announce_at: at("2026-10-10T18:00:00Z"),
            lists_due_at: at("2026-10-13T20:00:00Z"),
            grace: Duration::minutes(60),
            play_until_at: at("2026-10-18T20:00:00Z"),
            lists_opened_at: None,
            paired_at: None,
            closed_at: None,
        }
    }

    #[test]
    fn the_last_microsecond_counts_and_the_next_does_not() {
        let end = at("2026-10-13T21:00:00Z");
        let last = end - Duration::microseconds(1);
        assert_eq!(accept_list(&week(), last, false), Ok(ListArrival::OnTime));
        assert_eq!(
            accept_list(&week(), end, false),
            Err(ListNotAccepted::DeadlinePassed(end))
        );
        assert_eq!(
            accept_list(&week(), end, true),
            Ok(ListArrival::Late { minutes: 0 })
        );
    }

    #[test]
    fn a_day_late_is_1440_minutes() {
        let received = at("2026-10-14T21:00:59Z");
        assert_eq!(
            accept_list(&week(), received, true),
            Ok(ListArrival::Late { minutes: 1440 })
        );
    }

    #[test]
    fn nothing_slips_in_after_opening_even_if_a_clock_lags() {
        let opened = WeekFacts {
            lists_opened_at: Some(at("2026-10-13T21:00:00Z")),
            ..week()
        };
        let earlier = at("2026-10-13T20:59:00Z");
        assert!(matches!(
            accept_list(&opened, earlier, false),
            Err(ListNotAccepted::DeadlinePassed(_))
        ));
        assert_eq!(
            accept_list(&opened, earlier, true),
            Ok(ListArrival::Late { minutes: 0 })
        );
    }

    #[test]
    fn neither_before_the_announcement_nor_after_the_close() {
        let early = at("2026-10-10T17:59:59Z");
        assert_eq!(
            accept_list(&week(), early, true),
            Err(ListNotAccepted::NotAnnounced)
        );
        let closed = WeekFacts {
            closed_at: Some(at("2026-10-19T00:00:00Z")),
            ..week()
        };
        assert_eq!(
            accept_list(&closed, early, true),
            Err(ListNotAccepted::Closed)
        );
    }
}
