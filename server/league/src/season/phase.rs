//! A week's phase: by what was committed, and by the clock.

use chrono::Duration;

use crate::time::Instant;

/// The instants of a week that were planned, and those of what has happened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WeekFacts {
    /// Cap and scenario go out.
    pub announce_at: Instant,
    pub lists_due_at: Instant,
    /// How long after it lists still count as in time.
    pub grace: Duration,
    /// Games must be played.
    pub play_until_at: Instant,
    /// When all lists were opened.
    pub lists_opened_at: Option<Instant>,
    /// When the first pairing round was published.
    pub paired_at: Option<Instant>,
    /// When the week was closed.
    pub closed_at: Option<Instant>,
}

/// The life of a week.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum WeekPhase {
    Planned,
    /// Announced; lists come in.
    Announced,
    /// The deadline and its grace are over; the lists are about to be opened.
    ListsDue,
    /// Everybody sees the lists.
    ListsOpened,
    /// The pairings are out.
    Paired,
    /// The table of the week stands.
    Closed,
}

impl WeekFacts {
    /// From this instant on a list is late: the end of the grace.
    pub fn accepted_until(&self) -> Instant {
        self.lists_due_at + self.grace
    }

    /// Whether a list that is received now comes too late without leave.
    pub fn needs_leave(&self, received: Instant) -> bool {
        received >= self.accepted_until() || self.lists_opened_at.is_some()
    }

    /// Where the week stands at `now`.
    pub fn phase(&self, now: Instant) -> WeekPhase {
        if self.closed_at.is_some() {
            WeekPhase::Closed
        } else if self.paired_at.is_some() {
            WeekPhase::Paired
        } else if self.lists_opened_at.is_some() {
            WeekPhase::ListsOpened
        } else if now >= self.accepted_until() {
            WeekPhase::ListsDue
        } else if now >= self.announce_at {
            WeekPhase::Announced
        } else {
            WeekPhase::Planned
        }
    }
}
