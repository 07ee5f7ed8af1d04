//! What was costly to reckon is kept for as long as its season does not change.

use std::collections::HashMap;
use std::hash::Hash;
use std::sync::{Arc, Mutex, PoisonError};

use crate::Refusal;
use crate::turns::{Turn, Turns};

/// Answers kept at most; then all are forgotten.
const MOST: usize = 256;

/// Answers, each with the version of the season that it was reckoned from.
pub(crate) struct Kept<K, V>(Arc<Mutex<HashMap<K, (i64, V)>>>);

impl<K, V> Clone for Kept<K, V> {
    fn clone(&self) -> Self {
        Self(Arc::clone(&self.0))
    }
}

impl<K, V> Default for Kept<K, V> {
    fn default() -> Self {
        Self(Arc::default())
    }
}

impl<K: Eq + Hash, V: Clone> Kept<K, V> {
    /// The answer for a version, reckoned in turn with others where it is not kept. Whoever waited
    /// behind the same question finds its answer.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when too many wait, and those of `reckon`.
    pub async fn or_reckon(
        &self,
        key: K,
        version: i64,
        turns: &Turns,
        reckon: impl AsyncFnOnce(Turn) -> Result<V, Refusal>,
    ) -> Result<V, Refusal> {
        if let Some(kept) = self.find(&key, version) {
            return Ok(kept);
        }
        let turn = turns.take().await?;
        if let Some(kept) = self.find(&key, version) {
            return Ok(kept);
        }
        let answer = reckon(turn).await?;
        let mut all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if all.len() >= MOST {
            all.clear();
        }
        all.insert(key, (version, answer.clone()));
        Ok(answer)
    }

    fn find(&self, key: &K, version: i64) -> Option<V> {
        let all = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let (kept, answer) = all.get(key)?;
        (*kept == version).then(|| answer.clone())
    }
}

#[cfg(test)]
mod tests {
    use std::cell::Cell;

    use super::*;

    #[tokio::test]
    async fn an_answer_is_reckoned_once_for_each_version() {
        let (kept, turns, times) = (Kept::default(), Turns::new(1, 1), Cell::new(0));
        let ask = async |version| {
            let reckon = async |_| {
                times.set(times.get() + 1);
                Ok(times.get())
            };
            kept.or_reckon("season", version, &turns, reckon).await
        };
        let mut answers = Vec::new();
        for version in [7, 7, 8, 8] {
            answers.push(ask(version).await.unwrap());
        }
        assert_eq!(answers, [1, 1, 2, 2]);
    }
}
