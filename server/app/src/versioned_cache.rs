//! A cache of costly results, each valid for one version of its season.

use std::hash::Hash;
use std::sync::Arc;

use quick_cache::sync::Cache;

use crate::Refusal;
use crate::work_queue::{Permit, WorkQueue};

const MAX_ENTRIES: usize = 256;

/// Results by what was asked and the version of the season that they were computed from. Clones share
/// them.
#[derive(Clone)]
pub(crate) struct VersionedCache<K, V>(Arc<Cache<(K, i64), V>>);

impl<K: Eq + Hash, V: Clone> Default for VersionedCache<K, V> {
    fn default() -> Self {
        Self(Arc::new(Cache::new(MAX_ENTRIES)))
    }
}

impl<K: Clone + Eq + Hash, V: Clone> VersionedCache<K, V> {
    /// The result for a version, computed under a permit of `queue` where it is not cached. Whoever
    /// asks the same meanwhile waits for that computation, outside the queue; a failed one is not
    /// cached, and the next who waits computes.
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
        let computed = async { compute(queue.acquire().await?).await };
        self.0.get_or_insert_async(&(key, version), computed).await
    }
}

#[cfg(test)]
mod tests {
    use std::cell::Cell;

    use futures_util::future::join_all;
    use tokio::task::yield_now as pause;

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

    #[tokio::test]
    async fn many_who_ask_at_once_wait_for_one_computation_outside_the_queue() {
        let (cache, queue, times) = (
            VersionedCache::default(),
            WorkQueue::new(1, 0),
            Cell::new(0),
        );
        let ask = async || {
            let compute = async |_| {
                pause().await;
                times.set(times.get() + 1);
                Ok(times.get())
            };
            cache.get_or_compute("season", 7, &queue, compute).await
        };
        let answers = join_all((0..20).map(|_| ask())).await;
        assert!(answers.into_iter().all(|answer| answer.unwrap() == 1));
    }

    #[tokio::test]
    async fn a_failed_computation_is_not_cached() {
        let (cache, queue) = (VersionedCache::default(), WorkQueue::new(1, 0));
        let failed = cache
            .get_or_compute("season", 7, &queue, async |_| Err(Refusal::NotFound))
            .await;
        assert!(failed.is_err());
        let second = cache.get_or_compute("season", 7, &queue, async |_| Ok(1));
        assert_eq!(second.await.unwrap(), 1);
    }
}
