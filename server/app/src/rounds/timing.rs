//! How long a pairing takes, for whoever watches the server. The clock is theirs.

use std::fmt;
use std::sync::{Arc, OnceLock};

use crate::Desk;

/// A step of a pairing that takes time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// Finding the best round, or the least repair of one.
    Solve,
    /// Checking the proof of a round that is to be published.
    Check,
}

/// Told that a step begins; what it answers is dropped when the step ends.
pub type Stopwatch = Box<dyn Fn(Step) -> Box<dyn Send> + Send + Sync>;

/// The one stopwatch of this process, shared by all clones of a desk.
#[derive(Clone, Default)]
pub(crate) struct Timed(Arc<OnceLock<Stopwatch>>);

impl Timed {
    /// Takes a step under the stopwatch, if there is one.
    pub fn take<R>(&self, step: Step, act: impl FnOnce() -> R) -> R {
        let _running = self.0.get().map(|begin| begin(step));
        act()
    }
}

impl fmt::Debug for Timed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Timed")
    }
}

impl Desk {
    /// Has the steps of every pairing timed. Only the first stopwatch is kept.
    pub fn on_pairing(&self, stopwatch: Stopwatch) {
        let _ = self.timed.0.set(stopwatch);
    }
}
