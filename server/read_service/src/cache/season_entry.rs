//! The cache entry of one season: its newest known version and the pages rendered for it.

use std::collections::HashMap;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicI64, AtomicU64, Ordering};
use std::time::Duration;

use arc_swap::ArcSwap;
use tokio::sync::{Mutex, watch};

use crate::cache::cached_page::CachedPage;
use crate::cache::league_clock::LeagueClock;
use crate::resources::PageKey;

/// Pages of a season at most; one more evicts all of them. A season of 52 weeks and 100 players has about a
/// hundred addresses that people read and 5,200 that they could.
const MAX_PAGES: usize = 1000;

/// Stands for "not confirmed yet".
const NEVER: u64 = u64::MAX;

const MICROS_PER_SECOND: u64 = 1_000_000;

/// What the cache holds of one season.
#[derive(Debug)]
pub struct SeasonEntry {
    version: AtomicI64,
    /// Microseconds since the process began, or [`NEVER`].
    confirmed_at: AtomicU64,
    /// Microseconds since the process began.
    last_read_at: AtomicU64,
    /// Evicted from the cache.
    retired: AtomicBool,
    pages: ArcSwap<HashMap<PageKey, Arc<CachedPage>>>,
    versions: watch::Sender<i64>,
    /// Held while pages are rendered: of many readers who miss one renders.
    pub build_lock: Mutex<()>,
}

impl SeasonEntry {
    pub fn new() -> Self {
        Self {
            version: AtomicI64::new(0),
            confirmed_at: AtomicU64::new(NEVER),
            last_read_at: AtomicU64::new(0),
            retired: AtomicBool::new(false),
            pages: ArcSwap::default(),
            versions: watch::Sender::new(0),
            build_lock: Mutex::default(),
        }
    }

    /// The newest version that is known.
    pub fn version(&self) -> i64 {
        self.version.load(Ordering::Acquire)
    }

    /// From now on no page of an older version is served.
    pub fn raise_version(&self, version: i64) {
        if self.version.fetch_max(version, Ordering::AcqRel) < version {
            self.versions.send_if_modified(|newest| {
                let newer = *newest < version;
                *newest = version.max(*newest);
                newer
            });
        }
    }

    /// The database was asked at `at`, since the process began, and knew no version newer than `version`.
    pub fn confirm(&self, version: i64, at: Duration) {
        self.raise_version(version);
        let at = micros(at);
        let later = |before| (before == NEVER || before < at).then_some(at);
        // An update that fails is older than the confirmation that stands.
        let _ = self
            .confirmed_at
            .fetch_update(Ordering::AcqRel, Ordering::Acquire, later);
    }

    /// Whether the version was confirmed within `lease` before `now`.
    pub fn is_confirmed(&self, now: Duration, lease: Duration) -> bool {
        let confirmed = self.confirmed_at.load(Ordering::Acquire);
        confirmed != NEVER
            && micros(now) < confirmed.saturating_add(micros(lease))
            && !self.retired.load(Ordering::Acquire)
    }

    /// From now on nothing of it is served, whoever still holds it.
    pub fn retire(&self) {
        self.retired.store(true, Ordering::Release);
    }

    /// Somebody read it at `now`. Stored once a second: every store takes the cache line from all other
    /// threads.
    pub fn touch(&self, now: Duration) {
        let now = micros(now);
        if now > self.last_read_at.load(Ordering::Relaxed) + MICROS_PER_SECOND {
            self.last_read_at.store(now, Ordering::Relaxed);
        }
    }

    /// Whether a client follows the season, or read it within `idle` before `now`.
    pub fn is_in_use(&self, now: Duration, idle: Duration) -> bool {
        let last_read_at = self.last_read_at.load(Ordering::Relaxed);
        self.versions.receiver_count() > 0
            || micros(now) < last_read_at.saturating_add(micros(idle))
    }

    /// A page of the newest version that has not expired.
    pub fn page(&self, key: PageKey, clock: &LeagueClock) -> Option<Arc<CachedPage>> {
        let pages = self.pages.load();
        let page = pages.get(&key)?;
        let is_valid = page.version >= self.version()
            && page.valid_until.is_none_or(|end| !clock.has_come(end));
        is_valid.then(|| Arc::clone(page))
    }

    /// The pages that somebody has read since they were rendered.
    pub fn requested_pages(&self) -> Vec<(PageKey, Arc<CachedPage>)> {
        let pages = self.pages.load();
        let in_use = pages.iter().filter(|(_, page)| page.is_requested());
        in_use.map(|(key, page)| (*key, Arc::clone(page))).collect()
    }

    /// Replaces all pages by those of a newer version, then announces the version.
    pub fn replace_pages(&self, version: i64, pages: HashMap<PageKey, Arc<CachedPage>>) {
        self.pages.store(Arc::new(pages));
        self.raise_version(version);
    }

    /// Adds a page and drops those of another version.
    pub fn insert_page(&self, key: PageKey, page: &Arc<CachedPage>) {
        self.pages.rcu(|pages| {
            let same = pages.iter().filter(|(_, old)| old.version == page.version);
            let mut pages: HashMap<_, _> = same.map(|(key, old)| (*key, Arc::clone(old))).collect();
            if pages.len() >= MAX_PAGES {
                pages.clear();
            }
            pages.insert(key, Arc::clone(page));
            pages
        });
    }

    /// Receives every version from now on; of several at once only the newest.
    pub fn subscribe(&self) -> watch::Receiver<i64> {
        self.versions.subscribe()
    }

    /// Number of clients that follow the season.
    pub fn subscribers(&self) -> usize {
        self.versions.receiver_count()
    }
}

fn micros(duration: Duration) -> u64 {
    u64::try_from(duration.as_micros()).unwrap_or(NEVER - 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    const LEASE: Duration = Duration::from_secs(2);

    #[test]
    fn a_version_never_falls() {
        let entry = SeasonEntry::new();
        entry.raise_version(3);
        entry.raise_version(2);
        entry.confirm(1, Duration::ZERO);
        assert_eq!(entry.version(), 3);
    }

    #[test]
    fn a_version_is_trusted_for_as_long_as_the_lease() {
        let entry = SeasonEntry::new();
        assert!(!entry.is_confirmed(Duration::ZERO, LEASE));
        entry.confirm(1, Duration::from_secs(5));
        assert!(entry.is_confirmed(Duration::from_secs(6), LEASE));
        assert!(!entry.is_confirmed(Duration::from_secs(7), LEASE));
        entry.confirm(1, Duration::from_secs(1));
        assert!(entry.is_confirmed(Duration::from_secs(6), LEASE));
    }

    #[test]
    fn a_retired_entry_is_trusted_no_more() {
        let entry = SeasonEntry::new();
        entry.confirm(1, Duration::from_secs(5));
        entry.retire();
        entry.confirm(1, Duration::from_secs(6));
        assert!(!entry.is_confirmed(Duration::from_secs(6), LEASE));
    }

    #[test]
    fn a_subscriber_receives_the_newest_of_several_versions_once() {
        let entry = SeasonEntry::new();
        let mut versions = entry.subscribe();
        entry.raise_version(2);
        entry.raise_version(5);
        entry.raise_version(4);
        assert!(versions.has_changed().unwrap());
        assert_eq!(*versions.borrow_and_update(), 5);
        assert!(!versions.has_changed().unwrap());
    }
}
