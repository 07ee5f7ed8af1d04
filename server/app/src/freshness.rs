//! Whether what the database shows is current. A replica that is cut off from its primary shows what
//! it has for ever, and nothing in it tells that there is more.
//!
//! Moments are counted from the start of this process, by the steady clock that a desk is given.

use std::fmt;
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use store::replication::Replica;

/// How long this process has been running.
pub type Uptime = Box<dyn Fn() -> Duration + Send + Sync>;

/// Until when the database is known to show everything.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Known {
    /// Nobody has looked, or that was before this process began.
    Never,
    /// It is a replica, which had all that its primary had committed by then.
    Until(Duration),
    /// It is a primary: it shows everything.
    Always,
}

/// What this process knows of its database, shared by all clones of a desk.
#[derive(Clone)]
pub(crate) struct Freshness {
    uptime: Arc<Uptime>,
    known: Arc<Mutex<Known>>,
}

impl Freshness {
    /// Knows nothing yet.
    pub fn new(uptime: Uptime) -> Self {
        Self {
            uptime: Arc::new(uptime),
            known: Arc::new(Mutex::new(Known::Never)),
        }
    }

    /// Takes over what the database has just said of itself.
    pub fn note(&self, replica: Option<Replica>) {
        let now = (self.uptime)();
        let shown = |replica: Replica| {
            let moment = replica.behind.and_then(|behind| now.checked_sub(behind));
            moment.map_or(Known::Never, Known::Until)
        };
        let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        *known = match (*known, replica.map(shown)) {
            (_, None) => Known::Always,
            // The last commit may be long ago, while later looks found that there was none since.
            (Known::Until(before), Some(Known::Until(now))) => Known::Until(before.max(now)),
            (Known::Until(before), Some(_)) => Known::Until(before),
            (Known::Never | Known::Always, Some(shown)) => shown,
        };
    }

    /// Whether it is a primary, which shows everything.
    pub fn is_complete(&self) -> bool {
        *self.known.lock().unwrap_or_else(PoisonError::into_inner) == Known::Always
    }

    /// How old what the database shows may be: nothing of a primary; `None` where it never was known to
    /// show everything.
    pub fn age(&self) -> Option<Duration> {
        let known = *self.known.lock().unwrap_or_else(PoisonError::into_inner);
        match known {
            Known::Never => None,
            Known::Until(moment) => Some((self.uptime)().saturating_sub(moment)),
            Known::Always => Some(Duration::ZERO),
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

        fn look_at(&self, second: u64, connected: bool, behind: Option<u64>) {
            self.1.store(second, Ordering::Relaxed);
            let behind = behind.map(seconds);
            self.0.note(Some(Replica { connected, behind }));
        }
    }

    #[test]
    fn a_primary_shows_everything_and_nobody_knows_before_the_first_look() {
        let database = Watched::begin();
        assert_eq!(database.age_at(1), None);
        database.0.note(None);
        assert_eq!(database.age_at(1000), Some(Duration::ZERO));
    }

    #[test]
    fn a_replica_that_is_cut_off_ages_from_the_last_look_that_found_it_complete() {
        let database = Watched::begin();
        database.look_at(600, true, Some(0));
        database.look_at(603, false, Some(500));
        assert_eq!(database.age_at(604), Some(seconds(4)));
        database.look_at(605, true, Some(0));
        assert_eq!(database.age_at(605), Some(Duration::ZERO));
    }

    #[test]
    fn a_replica_that_falls_behind_shows_all_up_to_the_last_commit_that_it_replayed() {
        let database = Watched::begin();
        database.look_at(600, true, Some(0));
        database.look_at(609, true, Some(2));
        assert_eq!(database.age_at(609), Some(seconds(2)));
    }

    #[test]
    fn a_replica_that_was_cut_off_before_we_came_is_of_unknown_age() {
        let database = Watched::begin();
        database.look_at(3, false, Some(500));
        assert_eq!(database.age_at(4), None);
    }

    #[test]
    fn a_database_that_is_no_longer_a_primary_is_not_trusted_as_one() {
        let database = Watched::begin();
        database.0.note(None);
        database.look_at(3, false, None);
        assert_eq!(database.age_at(3), None);
    }
}
