//! Counters of the page cache, for the metrics.

use std::sync::atomic::{AtomicU64, Ordering};

/// What the cache counts since the process started.
#[derive(Debug, Default)]
pub struct CacheCounters {
    /// Pages that were cached.
    pub hits: Counter,
    /// Pages that had to be rendered.
    pub misses: Counter,
    /// Bodies that were encoded, each once for a version.
    pub encodes: Counter,
}

/// A number that only rises.
#[derive(Debug, Default)]
pub struct Counter(AtomicU64);

impl Counter {
    pub(crate) fn add_one(&self) {
        self.0.fetch_add(1, Ordering::Relaxed);
    }

    /// The number at this moment.
    pub fn get(&self) -> u64 {
        self.0.load(Ordering::Relaxed)
    }
}
