//! CPU scheduling of worker threads: batch policy against preemption, and a yield after a long burst.

use std::cell::RefCell;
use std::thread::yield_now;
use std::time::{Duration, Instant};

/// A worker that has answered for so long without a gap yields: well before the scheduler's next tick would
/// preempt it (`time(7)`: 1 to 10 ms).
const MAX_BURST: Duration = Duration::from_micros(500);

/// From one response to the next it takes far less: a longer gap means that the thread was idle or preempted.
const IDLE_GAP: Duration = Duration::from_micros(50);

thread_local! {
    static BURST: RefCell<Option<Burst>> = const { RefCell::new(None) };
}

/// Sets SCHED_BATCH for this thread (`sched(7)`): when it wakes it does not preempt the thread that runs. Under
/// load more requests then wait for each time slice, and less goes into context switches: a fifth of all
/// processor time where clients and server share two cores. On a free core it runs at once, as before.
pub fn use_batch() {
    #[cfg(target_os = "linux")]
    if scheduler::set_self_policy(scheduler::Policy::Batch, 0).is_err() {
        tracing::debug!("worker threads preempt others");
    }
}

/// Notes a response at `now`, and yields the processor after a long burst: clients that ask again at once would
/// never end it, and whoever shares the core, perhaps another worker, would wait for the scheduler's tick. The
/// 99th percentile falls to three quarters that way (`tests/load/standings.sh`).
pub fn yield_if_long(now: Instant) {
    BURST.with_borrow_mut(|burst| {
        let burst = burst.get_or_insert(Burst::new(now));
        burst.extend(now);
        if burst.is_long() {
            yield_now();
            *burst = Burst::new(Instant::now());
        }
    });
}

/// Responses without a gap.
struct Burst {
    started_at: Instant,
    last_at: Instant,
}

impl Burst {
    fn new(now: Instant) -> Self {
        Self {
            started_at: now,
            last_at: now,
        }
    }

    fn extend(&mut self, now: Instant) {
        if now.saturating_duration_since(self.last_at) > IDLE_GAP {
            self.started_at = now;
        }
        self.last_at = now;
    }

    fn is_long(&self) -> bool {
        self.last_at.saturating_duration_since(self.started_at) > MAX_BURST
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A burst of responses, each so long after the one before.
    fn after(steps: impl IntoIterator<Item = Duration>) -> Burst {
        let mut now = Instant::now();
        let mut burst = Burst::new(now);
        for step in steps {
            now += step;
            burst.extend(now);
        }
        burst
    }

    const QUICK: Duration = Duration::from_micros(10);

    #[test]
    fn a_burst_is_long_once_responses_followed_each_other_for_half_a_millisecond() {
        assert!(!after([QUICK; 50]).is_long());
        assert!(after([QUICK; 51]).is_long());
    }

    #[test]
    fn a_gap_begins_a_new_burst() {
        let before_and_after = [[QUICK; 40], [QUICK; 40]];
        assert!(after(before_and_after.concat()).is_long());
        let paused = before_and_after.join(&(IDLE_GAP + QUICK));
        assert!(!after(paused).is_long());
    }
}
