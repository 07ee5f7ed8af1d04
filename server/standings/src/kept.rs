//! What is kept of one season: its newest known version and the pages made for it.

use std::collections::HashMap;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicI64, AtomicU64, Ordering};
use std::time::Duration;

use arc_swap::ArcSwap;
use tokio::sync::{Mutex, watch};

use crate::league_clock::LeagueClock;
use crate::page::Page;
use crate::resource::Wanted;

/// Pages of a season at most; then all are made anew. A season of 52 weeks and 100 players has about
/// a hundred addresses that people look at and 5,200 that they could.
const MOST_PAGES: usize = 1000;

/// No time at which something was confirmed.
const NEVER: u64 = u64::MAX;

/// In microseconds.
const SECOND: u64 = 1_000_000;

/// One season's place on the shelf.
#[derive(Debug)]
pub struct Kept {
    version: AtomicI64,
    /// Microseconds of running time, or [`NEVER`].
    confirmed: AtomicU64,
    /// Microseconds of running time.
    asked: AtomicU64,
    /// It is on the shelf no more.
    ended: AtomicBool,
    pages: ArcSwap<HashMap<Wanted, Arc<Page>>>,
    news: watch::Sender<i64>,
    /// Held by whoever makes pages, so that a crowd makes each once.
    pub making: Mutex<()>,
}

impl Kept {
    pub fn new() -> Self {
        Self {
            version: AtomicI64::new(0),
            confirmed: AtomicU64::new(NEVER),
            asked: AtomicU64::new(0),
            ended: AtomicBool::new(false),
            pages: ArcSwap::default(),
            news: watch::Sender::new(0),
            making: Mutex::default(),
        }
    }

    /// The newest version that is known.
    pub fn version(&self) -> i64 {
        self.version.load(Ordering::Acquire)
    }

    /// There is this version: from now on no page of an older one is served.
    pub fn raise(&self, version: i64) {
        if self.version.fetch_max(version, Ordering::AcqRel) < version {
            self.news.send_if_modified(|newest| {
                let newer = *newest < version;
                *newest = version.max(*newest);
                newer
            });
        }
    }

    /// The database was asked at `at` of the running time and knew no version newer than `version`.
    pub fn confirm(&self, version: i64, at: Duration) {
        self.raise(version);
        let at = micros(at);
        let later = |before| (before == NEVER || before < at).then_some(at);
        // Somebody confirmed something later: that holds.
        let _ = self
            .confirmed
            .fetch_update(Ordering::AcqRel, Ordering::Acquire, later);
    }

    /// Whether the version was confirmed within `lease` before `now`.
    pub fn is_confirmed(&self, now: Duration, lease: Duration) -> bool {
        let confirmed = self.confirmed.load(Ordering::Acquire);
        confirmed != NEVER
            && micros(now) < confirmed.saturating_add(micros(lease))
            && !self.ended.load(Ordering::Acquire)
    }

    /// From now on nothing of it is served, whoever still holds it.
    pub fn end(&self) {
        self.ended.store(true, Ordering::Release);
    }

    /// Somebody asked at `now`. Noted once a second: each note takes the place from under the eyes of
    /// all other threads.
    pub fn note_asked(&self, now: Duration) {
        let now = micros(now);
        if now > self.asked.load(Ordering::Relaxed) + SECOND {
            self.asked.store(now, Ordering::Relaxed);
        }
    }

    /// Whether somebody listens, or asked within `idle` before `now`.
    pub fn is_wanted(&self, now: Duration, idle: Duration) -> bool {
        let asked = self.asked.load(Ordering::Relaxed);
        self.news.receiver_count() > 0 || micros(now) < asked.saturating_add(micros(idle))
    }

    /// A page of the newest version that the clock has not ended.
    pub fn page(&self, wanted: Wanted, clock: &LeagueClock) -> Option<Arc<Page>> {
        let pages = self.pages.load();
        let page = pages.get(&wanted)?;
        let holds = page.version >= self.version()
            && page.holds_until.is_none_or(|end| !clock.has_come(end));
        holds.then(|| Arc::clone(page))
    }

    /// The pages that somebody has read since they were made.
    pub fn pages_in_use(&self) -> Vec<(Wanted, Arc<Page>)> {
        let pages = self.pages.load();
        let in_use = pages.iter().filter(|(_, page)| page.is_read());
        in_use
            .map(|(wanted, page)| (*wanted, Arc::clone(page)))
            .collect()
    }

    /// Puts pages of a newer version in the place of all there are, then tells of the version.
    pub fn turn(&self, version: i64, pages: HashMap<Wanted, Arc<Page>>) {
        self.pages.store(Arc::new(pages));
        self.raise(version);
    }

    /// Keeps a page, and of the others those of the same version.
    pub fn keep(&self, wanted: Wanted, page: &Arc<Page>) {
        self.pages.rcu(|pages| {
            let same = pages.iter().filter(|(_, old)| old.version == page.version);
            let mut pages: HashMap<_, _> = same.map(|(key, old)| (*key, Arc::clone(old))).collect();
            if pages.len() >= MOST_PAGES {
                pages.clear();
            }
            pages.insert(wanted, Arc::clone(page));
            pages
        });
    }

    /// Hears of every version from now on; of several at once only the newest.
    pub fn subscribe(&self) -> watch::Receiver<i64> {
        self.news.subscribe()
    }

    /// How many hear of its versions.
    pub fn subscribers(&self) -> usize {
        self.news.receiver_count()
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
        let kept = Kept::new();
        kept.raise(3);
        kept.raise(2);
        kept.confirm(1, Duration::ZERO);
        assert_eq!(kept.version(), 3);
    }

    #[test]
    fn a_version_is_trusted_for_as_long_as_the_lease() {
        let kept = Kept::new();
        assert!(!kept.is_confirmed(Duration::ZERO, LEASE));
        kept.confirm(1, Duration::from_secs(5));
        assert!(kept.is_confirmed(Duration::from_secs(6), LEASE));
        assert!(!kept.is_confirmed(Duration::from_secs(7), LEASE));
        kept.confirm(1, Duration::from_secs(1));
        assert!(kept.is_confirmed(Duration::from_secs(6), LEASE));
    }

    #[test]
    fn what_has_ended_is_trusted_no_more() {
        let kept = Kept::new();
        kept.confirm(1, Duration::from_secs(5));
        kept.end();
        kept.confirm(1, Duration::from_secs(6));
        assert!(!kept.is_confirmed(Duration::from_secs(6), LEASE));
    }

    #[test]
    fn whoever_listens_hears_the_newest_of_several_versions_once() {
        let kept = Kept::new();
        let mut news = kept.subscribe();
        kept.raise(2);
        kept.raise(5);
        kept.raise(4);
        assert!(news.has_changed().unwrap());
        assert_eq!(*news.borrow_and_update(), 5);
        assert!(!news.has_changed().unwrap());
    }
}
