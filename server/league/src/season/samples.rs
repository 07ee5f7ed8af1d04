//! Test fixtures: a week of a season.

use chrono::Duration;

use super::phase::WeekFacts;
use crate::time::Instant;

/// A week whose lists are due then, with an hour of grace. It is announced four days before and played
/// until five days after; nothing of it has happened yet.
pub fn week_due(due: Instant) -> WeekFacts {
    WeekFacts {
        announce_at: due - Duration::days(4),
        lists_due_at: due,
        grace: Duration::minutes(60),
        play_until_at: due + Duration::days(5),
        lists_opened_at: None,
        paired_at: None,
        closed_at: None,
    }
}
