//! When the system gives its turn to a thread that answers, and when the thread gives it back.

use std::cell::RefCell;
use std::thread::yield_now;
use std::time::{Duration, Instant};

/// A thread that answers for so long without a pause gives back its turn: well before the system's
/// next tick would take it away (`time(7)`: 1 to 10 ms).
const LONG: Duration = Duration::from_micros(500);

/// From one answer to the next it takes far less: meanwhile it was not the thread's turn, or there was
/// nothing to answer.
const PAUSE: Duration = Duration::from_micros(50);

thread_local! {
    static ANSWERING: RefCell<Option<Turn>> = const { RefCell::new(None) };
}

/// Has this thread take its turn when others end theirs, not in the midst of them (`sched(7)`,
/// SCHED_BATCH). Under load more requests then wait for each turn, and less of the machine goes into
/// changing turns: a fifth of all where clients and server share two cores. Where a core is free the
/// turn comes at once, as before.
pub fn take_fewer() {
    #[cfg(target_os = "linux")]
    if scheduler::set_self_policy(scheduler::Policy::Batch, 0).is_err() {
        tracing::debug!("threads that answer interrupt others");
    }
}

/// This thread has an answer at `now`. Gives back a long turn: clients that ask again at once would
/// never end it, and whoever shares the core, perhaps another thread that answers, would wait for the
/// system's tick. The slowest of a hundred answers come in three quarters of the time that way
/// (`tests/load/standings.sh`).
pub fn give_back_if_long(now: Instant) {
    ANSWERING.with_borrow_mut(|turn| {
        let turn = turn.get_or_insert(Turn::at(now));
        turn.answer(now);
        if turn.is_long() {
            yield_now();
            *turn = Turn::at(Instant::now());
        }
    });
}

/// Answers without a pause.
struct Turn {
    began: Instant,
    last: Instant,
}

impl Turn {
    fn at(now: Instant) -> Self {
        Self {
            began: now,
            last: now,
        }
    }

    fn answer(&mut self, now: Instant) {
        if now.saturating_duration_since(self.last) > PAUSE {
            self.began = now;
        }
        self.last = now;
    }

    fn is_long(&self) -> bool {
        self.last.saturating_duration_since(self.began) > LONG
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The answers of a turn, each so long after the one before.
    fn after(steps: impl IntoIterator<Item = Duration>) -> Turn {
        let mut now = Instant::now();
        let mut turn = Turn::at(now);
        for step in steps {
            now += step;
            turn.answer(now);
        }
        turn
    }

    const QUICK: Duration = Duration::from_micros(10);

    #[test]
    fn a_turn_is_long_once_answers_followed_each_other_for_half_a_millisecond() {
        assert!(!after([QUICK; 50]).is_long());
        assert!(after([QUICK; 51]).is_long());
    }

    #[test]
    fn a_pause_begins_a_new_turn() {
        let before_and_after = [[QUICK; 40], [QUICK; 40]];
        assert!(after(before_and_after.concat()).is_long());
        let paused = before_and_after.join(&(PAUSE + QUICK));
        assert!(!after(paused).is_long());
    }
}
