//! The league's clock between two looks at it.

use std::sync::atomic::{AtomicI64, Ordering};
use std::time::{Duration, Instant as Moment};

use league::time::Instant;

/// Runs on by this machine's steady clock from what the database last said.
#[derive(Debug)]
pub struct LeagueClock {
    start: Moment,
    /// What the league's clock showed at `start`, in microseconds of the Unix epoch.
    at_start: AtomicI64,
}

impl LeagueClock {
    pub fn new() -> Self {
        Self {
            start: Moment::now(),
            at_start: AtomicI64::new(0),
        }
    }

    /// Time since this process began to serve.
    pub fn running(&self) -> Duration {
        self.start.elapsed()
    }

    /// Takes over what the database said to a question asked at `asked`. The clock thereby runs ahead
    /// by at most the time that the answer took, and is never behind.
    pub fn set(&self, asked: Duration, said: Instant) {
        let at_start = said.timestamp_micros() - micros(asked);
        self.at_start.store(at_start, Ordering::Relaxed);
    }

    /// Whether an instant has come.
    pub fn has_come(&self, instant: Instant) -> bool {
        let now = self.at_start.load(Ordering::Relaxed) + micros(self.running());
        instant.timestamp_micros() <= now
    }
}

fn micros(duration: Duration) -> i64 {
    i64::try_from(duration.as_micros()).unwrap_or(i64::MAX)
}
