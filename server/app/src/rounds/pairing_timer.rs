//! Timing of the steps of a pairing, for the metrics of the process. The clock is the caller's.

use std::fmt;
use std::sync::{Arc, OnceLock};

/// A step of a pairing that takes long.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PairingStep {
    /// Finding the best round, or the least repair of one.
    Solve,
    /// Verifying the proof of a round that is to be published.
    Check,
}

/// Called when a step begins; what it returns is dropped when the step ends.
pub type Stopwatch = Box<dyn Fn(PairingStep) -> Box<dyn Send> + Send + Sync>;

/// The one stopwatch of this process, shared by all clones of the application.
#[derive(Clone, Default)]
pub(crate) struct PairingTimer(Arc<OnceLock<Stopwatch>>);

impl PairingTimer {
    /// Only the first stopwatch is kept.
    pub fn set(&self, stopwatch: Stopwatch) {
        let _ = self.0.set(stopwatch);
    }

    /// Runs a step, timed if there is a stopwatch.
    pub fn time<R>(&self, step: PairingStep, act: impl FnOnce() -> R) -> R {
        let _running = self.0.get().map(|begin| begin(step));
        act()
    }
}

impl fmt::Debug for PairingTimer {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("PairingTimer")
    }
}
