//! What the cache counts.

use std::sync::atomic::{AtomicU64, Ordering};

/// Counts since the process started.
#[derive(Debug, Default)]
pub struct Counts {
    /// Bodies that were there.
    pub hits: Count,
    /// Bodies that had to be made.
    pub misses: Count,
    /// Encodings made, each once for a version.
    pub encodes: Count,
}

/// A number that only rises.
#[derive(Debug, Default)]
pub struct Count(AtomicU64);

impl Count {
    pub(crate) fn add_one(&self) {
        self.0.fetch_add(1, Ordering::Relaxed);
    }

    /// The number at this moment.
    pub fn get(&self) -> u64 {
        self.0.load(Ordering::Relaxed)
    }
}
