use std::thread;
use std::time::{Duration, Instant};

/// Looks again and again until something has happened that the test has no other way to hear of.
#[track_caller]
pub fn until(what: &str, mut happened: impl FnMut() -> bool) {
    let deadline = Instant::now() + Duration::from_secs(60);
    while !happened() {
        assert!(Instant::now() < deadline, "not within a minute: {what}");
        thread::yield_now();
    }
}
