//! Polling with a deadline.

use std::time::{Duration, Instant};

use tokio::time::{MissedTickBehavior, interval};

use super::cluster::RUNTIME;

/// No wait lasts longer, however busy the machine is.
pub const TIMEOUT: Duration = Duration::from_secs(60);

/// How often a state is looked at that nobody tells of.
pub const POLL_INTERVAL: Duration = Duration::from_millis(20);

/// Looks at every tick of a timer until something has happened.
///
/// For states that nobody tells of: a lock that a session waits for, a process that is ready again.
/// What a season's change brings about is waited for by the notice of that change (`Listener::next`).
/// Between two ticks the thread is parked, so that the core is left to the server that is waited for.
#[track_caller]
pub fn until(what: &str, mut happened: impl FnMut() -> bool) {
    let deadline = Instant::now() + TIMEOUT;
    let mut ticks = RUNTIME.block_on(async { interval(POLL_INTERVAL) });
    ticks.set_missed_tick_behavior(MissedTickBehavior::Delay);
    while !happened() {
        assert!(Instant::now() < deadline, "not within a minute: {what}");
        RUNTIME.block_on(ticks.tick());
    }
}
