//! Costly work takes turns: a few at once, some more in the queue, and nobody beyond.

use std::sync::Arc;

use tokio::sync::{OwnedSemaphorePermit, Semaphore};

use crate::Refusal;
use crate::aside::aside;

/// A queue before costly work.
#[derive(Clone)]
pub(crate) struct Turns {
    at_once: Arc<Semaphore>,
    places: Arc<Semaphore>,
}

/// Held while the work is done.
pub(crate) struct Turn {
    _turn: OwnedSemaphorePermit,
    _place: OwnedSemaphorePermit,
}

impl Turn {
    /// Does the work aside; the turn lasts until it is done, also when whoever asked has gone away.
    ///
    /// # Errors
    /// [`Refusal::Broken`] when the work panicked.
    pub async fn aside<T: Send + 'static>(
        self,
        work: impl FnOnce() -> T + Send + 'static,
    ) -> Result<T, Refusal> {
        aside(move || {
            let done = work();
            drop(self);
            done
        })
        .await
    }
}

impl Turns {
    /// So many at once, and so many that wait.
    pub fn new(at_once: usize, waiting: usize) -> Self {
        Self {
            at_once: Arc::new(Semaphore::new(at_once)),
            places: Arc::new(Semaphore::new(at_once + waiting)),
        }
    }

    /// Waits for a turn.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the queue is full.
    pub async fn take(&self) -> Result<Turn, Refusal> {
        let full = |_| Refusal::Unavailable {
            retry_after: 1,
            cause: "the queue for costly work is full".to_owned(),
        };
        let closed = |_| Refusal::Broken("nobody takes turns any more".to_owned());
        let place = Arc::clone(&self.places).try_acquire_owned().map_err(full)?;
        let turn = Arc::clone(&self.at_once).acquire_owned().await;
        Ok(Turn {
            _turn: turn.map_err(closed)?,
            _place: place,
        })
    }
}

#[cfg(test)]
mod tests {
    use futures_util::FutureExt;

    use super::*;

    #[tokio::test]
    async fn whoever_finds_the_queue_full_is_sent_away_and_whoever_waits_has_a_turn() {
        let turns = Turns::new(1, 1);
        let first = turns.take().await.unwrap();
        let mut second = std::pin::pin!(turns.take());
        assert!(second.as_mut().now_or_never().is_none());
        assert!(matches!(
            turns.take().await,
            Err(Refusal::Unavailable { .. })
        ));
        drop(first);
        let second = second.await.unwrap();
        drop(second);
        assert!(turns.take().await.is_ok());
    }
}
