//! Reminders of a week: what people can owe, and how often they are reminded of it.

use chrono::Duration;

use super::phase::{WeekFacts, WeekPhase};
use crate::time::Instant;

/// Between two reminders of the same kind in a week.
pub const MIN_REMINDER_INTERVAL: Duration = Duration::hours(12);

/// Whether people may be reminded again of what they were last reminded of then.
///
/// # Errors
/// The instant from which on they may.
pub fn check_reminder(last: Option<Instant>, now: Instant) -> Result<(), Instant> {
    match last.map(|last| last + MIN_REMINDER_INTERVAL) {
        Some(again_from) if now < again_from => Err(again_from),
        _ => Ok(()),
    }
}

/// Whether somebody without a list owes one: from the announcement until the lists are opened.
pub fn owes_list(week: &WeekFacts, now: Instant) -> bool {
    matches!(week.phase(now), WeekPhase::Announced | WeekPhase::ListsDue)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::season::samples::week_due;

    #[test]
    fn twelve_hours_lie_between_two_reminders() {
        let last: Instant = "2026-01-12T08:00:00Z".parse().unwrap();
        let again: Instant = "2026-01-12T20:00:00Z".parse().unwrap();
        assert_eq!(check_reminder(None, last), Ok(()));
        let early = again - Duration::microseconds(1);
        assert_eq!(check_reminder(Some(last), early), Err(again));
        assert_eq!(check_reminder(Some(last), again), Ok(()));
    }

    #[test]
    fn a_list_is_owed_from_the_announcement_until_the_lists_are_opened() {
        let due: Instant = "2026-01-12T20:00:00Z".parse().unwrap();
        let week = week_due(due);
        assert!(!owes_list(&week, due - Duration::days(5)));
        assert!(owes_list(&week, due - Duration::days(1)));
        assert!(owes_list(&week, due + Duration::days(1)));
        let opened = WeekFacts {
            lists_opened_at: Some(due),
            ..week
        };
        assert!(!owes_list(&opened, due + Duration::days(1)));
    }
}
