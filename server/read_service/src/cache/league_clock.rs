//! The league's clock between two queries: runs on by this machine's monotonic clock.

use std::sync::atomic::{AtomicI64, Ordering};
use std::time::{Duration, Instant as MonotonicInstant};

use league::time::Instant;

/// The database's last answer, carried on by a monotonic clock.
#[derive(Debug)]
pub struct LeagueClock {
    started_at: MonotonicInstant,
    /// What the league's clock showed at `started_at`, in microseconds of the Unix epoch.
    league_start: AtomicI64,
}

impl LeagueClock {
    pub fn new() -> Self {
        Self {
            started_at: MonotonicInstant::now(),
            league_start: AtomicI64::new(0),
        }
    }

    /// Time since this process began to serve.
    pub fn elapsed(&self) -> Duration {
        self.started_at.elapsed()
    }

    /// Takes over the database's `now`, which was queried at `queried_at`. The clock thereby runs ahead by at
    /// most the time that the answer took, and is never behind.
    pub fn set(&self, queried_at: Duration, now: Instant) {
        let league_start = now.timestamp_micros() - micros(queried_at);
        self.league_start.store(league_start, Ordering::Relaxed);
    }

    /// Whether an instant has come.
    pub fn has_come(&self, instant: Instant) -> bool {
        let now = self.league_start.load(Ordering::Relaxed) + micros(self.elapsed());
        instant.timestamp_micros() <= now
    }
}

fn micros(duration: Duration) -> i64 {
    i64::try_from(duration.as_micros()).unwrap_or(i64::MAX)
}
