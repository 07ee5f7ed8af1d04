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

    /// Whether the deadline and its grace are over: the lists may be opened.
    pub fn lists_are_due(&self, now: Instant) -> bool {
        now >= self.accepted_until()
    }

    /// Whether painting may be claimed: from the announcement until the week is closed.
    pub fn takes_claims(&self, now: Instant) -> bool {
        now >= self.announce_at && self.closed_at.is_none()
    }

    /// Whether leave to hand in late may be given: until a round is drawn from the lists, which may be a
    /// proposal, or the week is closed.
    pub fn takes_late_leave(&self, is_drawn: bool) -> bool {
        !is_drawn && self.closed_at.is_none()
    }

    /// Whether a list that is received now comes too late without leave.
    pub fn needs_leave(&self, received: Instant) -> bool {
        self.lists_are_due(received) || self.lists_opened_at.is_some()
    }

    /// Where the week stands at `now`.
    pub fn phase(&self, now: Instant) -> WeekPhase {
        if self.closed_at.is_some() {
            WeekPhase::Closed
        } else if self.paired_at.is_some() {
            WeekPhase::Paired
        } else if self.lists_opened_at.is_some() {
            WeekPhase::ListsOpened
        } else if self.lists_are_due(now) {
            WeekPhase::ListsDue
        } else if now >= self.announce_at {
            WeekPhase::Announced
        } else {
            WeekPhase::Planned
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::season::samples::week_due;

    fn week() -> WeekFacts {
        let due: Instant = "2026-01-12T20:00:00Z".parse().unwrap();
        week_due(due)
    }

    #[test]
    fn painting_is_claimed_from_the_announcement_until_the_close() {
        let week = week();
        assert!(!week.takes_claims(week.announce_at - Duration::seconds(1)));
        assert!(week.takes_claims(week.announce_at));
        let closed = WeekFacts {
            closed_at: Some(week.play_until_at),
            ..week
        };
        assert!(!closed.takes_claims(week.play_until_at));
    }

    #[test]
    fn leave_is_given_until_a_round_is_drawn_or_the_week_closed() {
        let week = week();
        assert!(week.takes_late_leave(false));
        assert!(!week.takes_late_leave(true));
        let closed = WeekFacts {
            closed_at: Some(week.play_until_at),
            ..week
        };
        assert!(!closed.takes_late_leave(false));
    }
}
