//! A cache of costly results, each valid for one version of its season.

use std::hash::Hash;

use crate::Refusal;
use crate::cache::Cache;
use crate::work_queue::{Permit, WorkQueue};

const MAX_ENTRIES: usize = 256;

/// Results, each with the version of the season that it was computed from.
#[derive(Clone)]
pub(crate) struct VersionedCache<K, V>(Cache<K, (i64, V)>);

impl<K: Eq + Hash, V: Clone> Default for VersionedCache<K, V> {
    fn default() -> Self {
        Self(Cache::new(MAX_ENTRIES, |_| 1))
    }
}

impl<K: Eq + Hash, V: Clone> VersionedCache<K, V> {
    /// The result for a version, computed under a permit of `queue` where it is not cached. Whoever
    /// waited behind the same question finds its answer.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the queue is full, and those of `compute`.
    pub async fn get_or_compute(
        &self,
        key: K,
        version: i64,
        queue: &WorkQueue,
        compute: impl AsyncFnOnce(Permit) -> Result<V, Refusal>,
    ) -> Result<V, Refusal> {
        if let Some(cached) = self.get(&key, version) {
            return Ok(cached);
        }
        let permit = queue.acquire().await?;
        // Whoever held the permit before may have asked the same.
        if let Some(cached) = self.get(&key, version) {
            return Ok(cached);
        }
        let value = compute(permit).await?;
        self.0.insert(key, (version, value.clone()));
        Ok(value)
    }

    fn get(&self, key: &K, version: i64) -> Option<V> {
        let (cached, value) = self.0.get(key)?;
        (cached == version).then_some(value)
    }
}

#[cfg(test)]
mod tests {
    use std::cell::Cell;

    use super::*;

    #[tokio::test]
    async fn a_result_is_computed_once_for_each_version() {
        let (cache, queue, times) = (
            VersionedCache::default(),
            WorkQueue::new(1, 1),
            Cell::new(0),
        );
        let ask = async |version| {
            let compute = async |_| {
                times.set(times.get() + 1);
                Ok(times.get())
            };
            cache
                .get_or_compute("season", version, &queue, compute)
                .await
        };
        let mut answers = Vec::new();
        for version in [7, 7, 8, 8] {
            answers.push(ask(version).await.unwrap());
        }
        assert_eq!(answers, [1, 1, 2, 2]);
    }
}
