//! How stale the database may be. A replica that is cut off from its primary serves what it has for
//! ever, and nothing in it tells that there is more.
//!
//! Times are counted from the start of this process, by the monotonic clock that the application is
//! given.

use std::fmt;
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use store::replication::ReplicaStatus;

/// How long this process has been running.
pub type Uptime = Box<dyn Fn() -> Duration + Send + Sync>;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum State {
    /// Nobody has asked, or the last commit was replayed before this process began.
    Unknown,
    /// A replica, which had all that its primary had committed by then.
    ReplicaAsOf(Duration),
    Primary,
}

/// What this process knows of its database, shared by all clones of the application.
#[derive(Clone)]
pub(crate) struct Freshness {
    uptime: Arc<Uptime>,
    state: Arc<Mutex<State>>,
}

impl Freshness {
    pub fn new(uptime: Uptime) -> Self {
        Self {
            uptime: Arc::new(uptime),
            state: Arc::new(Mutex::new(State::Unknown)),
        }
    }

    /// Takes over the status that the database has just reported; `None` of a primary.
    pub fn update(&self, replica: Option<ReplicaStatus>) {
        let now = (self.uptime)();
        let reported = |replica: ReplicaStatus| {
            let as_of = replica.lag.and_then(|lag| now.checked_sub(lag));
            as_of.map_or(State::Unknown, State::ReplicaAsOf)
        };
        let mut state = self.state.lock().unwrap_or_else(PoisonError::into_inner);
        *state = match (*state, replica.map(reported)) {
            (_, None) => State::Primary,
            // The last commit may be long ago, while later reports found that there was none since.
            (State::ReplicaAsOf(before), Some(State::ReplicaAsOf(now))) => {
                State::ReplicaAsOf(before.max(now))
            }
            (State::ReplicaAsOf(before), Some(_)) => State::ReplicaAsOf(before),
            (State::Unknown | State::Primary, Some(reported)) => reported,
        };
    }

    pub fn is_primary(&self) -> bool {
        *self.state.lock().unwrap_or_else(PoisonError::into_inner) == State::Primary
    }

    /// How old what the database shows may be: zero of a primary; `None` of a replica that never was
    /// known to be complete.
    pub fn age(&self) -> Option<Duration> {
        let state = *self.state.lock().unwrap_or_else(PoisonError::into_inner);
        match state {
            State::Unknown => None,
            State::ReplicaAsOf(as_of) => Some((self.uptime)().saturating_sub(as_of)),
            State::Primary => Some(Duration::ZERO),
        }
    }
}

impl fmt::Debug for Freshness {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_tuple("Freshness").field(&self.age()).finish()
    }
}

#[cfg(test)]
mod tests {
    use std::sync::atomic::{AtomicU64, Ordering};

    use super::*;

    const fn seconds(seconds: u64) -> Duration {
        Duration::from_secs(seconds)
    }

    /// A database that is watched by a clock which moves when the test says so.
    struct Watched(Freshness, Arc<AtomicU64>);

    impl Watched {
        fn begin() -> Self {
            let clock = Arc::new(AtomicU64::new(0));
            let hand = Arc::clone(&clock);
            let uptime = move || seconds(hand.load(Ordering::Relaxed));
            Self(Freshness::new(Box::new(uptime)), clock)
        }

        fn age_at(&self, second: u64) -> Option<Duration> {
            self.1.store(second, Ordering::Relaxed);
            self.0.age()
        }

        fn report_at(&self, second: u64, connected: bool, lag: Option<u64>) {
            self.1.store(second, Ordering::Relaxed);
            let lag = lag.map(seconds);
            self.0.update(Some(ReplicaStatus { connected, lag }));
        }
    }

    #[test]
    fn a_primary_shows_everything_and_nobody_knows_before_the_first_report() {
        let database = Watched::begin();
        assert_eq!(database.age_at(1), None);
        database.0.update(None);
        assert_eq!(database.age_at(1000), Some(Duration::ZERO));
    }

    #[test]
    fn a_replica_that_is_cut_off_ages_from_the_last_report_that_found_it_complete() {
        let database = Watched::begin();
        database.report_at(600, true, Some(0));
        database.report_at(603, false, Some(500));
        assert_eq!(database.age_at(604), Some(seconds(4)));
        database.report_at(605, true, Some(0));
        assert_eq!(database.age_at(605), Some(Duration::ZERO));
    }

    #[test]
    fn a_replica_that_falls_behind_shows_all_up_to_the_last_commit_that_it_replayed() {
        let database = Watched::begin();
        database.report_at(600, true, Some(0));
        database.report_at(609, true, Some(2));
        assert_eq!(database.age_at(609), Some(seconds(2)));
    }

    #[test]
    fn a_replica_that_was_cut_off_before_we_came_is_of_unknown_age() {
        let database = Watched::begin();
        database.report_at(3, false, Some(500));
        assert_eq!(database.age_at(4), None);
    }

    #[test]
    fn a_database_that_is_no_longer_a_primary_is_not_trusted_as_one() {
        let database = Watched::begin();
        database.0.update(None);
        database.report_at(3, false, None);
        assert_eq!(database.age_at(3), None);
    }
}
