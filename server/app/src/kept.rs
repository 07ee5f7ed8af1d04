//! What was costly to reckon is kept for as long as its season does not change.

use std::hash::Hash;

use crate::Refusal;
use crate::keeper::Keeper;
use crate::turns::{Turn, Turns};

/// Answers kept at most.
const MOST: usize = 256;

/// Answers, each with the version of the season that it was reckoned from.
#[derive(Clone)]
pub(crate) struct Kept<K, V>(Keeper<K, (i64, V)>);

impl<K: Eq + Hash, V: Clone> Default for Kept<K, V> {
    fn default() -> Self {
        Self(Keeper::new(MOST, |_| 1))
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
        self.0.keep(key, (version, answer.clone()));
        Ok(answer)
    }

    fn find(&self, key: &K, version: i64) -> Option<V> {
        let (kept, answer) = self.0.find(key)?;
        (kept == version).then_some(answer)
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
