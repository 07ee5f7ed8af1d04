//! A bounded queue for costly work: a few at once, some more waiting, and the rest refused (load
//! shedding).

use std::sync::Arc;

use tokio::sync::{OwnedSemaphorePermit, Semaphore};

use crate::Refusal;
use crate::run_blocking::run_blocking;

/// Limits how much work of one kind runs and waits. Clones share the limits.
#[derive(Clone)]
pub(crate) struct WorkQueue {
    running: Arc<Semaphore>,
    /// One slot for each that runs or waits.
    slots: Arc<Semaphore>,
}

/// The right to do one piece of work, held while it is done.
pub(crate) struct Permit {
    _running: OwnedSemaphorePermit,
    _slot: OwnedSemaphorePermit,
}

impl Permit {
    /// Does the work on a blocking thread. The permit is held until the work is done, also when the
    /// request has been cancelled: what it limits is memory and processor time, not requests.
    ///
    /// # Errors
    /// [`Refusal::Internal`] when the work panicked.
    pub async fn run_blocking<T: Send + 'static>(
        self,
        work: impl FnOnce() -> T + Send + 'static,
    ) -> Result<T, Refusal> {
        run_blocking(move || {
            let done = work();
            drop(self);
            done
        })
        .await
    }
}

impl WorkQueue {
    pub fn new(max_running: usize, max_waiting: usize) -> Self {
        Self {
            running: Arc::new(Semaphore::new(max_running)),
            slots: Arc::new(Semaphore::new(max_running + max_waiting)),
        }
    }

    /// Waits for a permit.
    ///
    /// # Errors
    /// [`Refusal::Unavailable`] when the queue is full.
    pub async fn acquire(&self) -> Result<Permit, Refusal> {
        let full = |_| Refusal::unavailable(1, "the queue for costly work is full");
        let closed = |_| Refusal::Internal("the queue for costly work is closed".to_owned());
        let slot = Arc::clone(&self.slots).try_acquire_owned().map_err(full)?;
        let running = Arc::clone(&self.running).acquire_owned().await;
        Ok(Permit {
            _running: running.map_err(closed)?,
            _slot: slot,
        })
    }
}

#[cfg(test)]
mod tests {
    use futures_util::FutureExt;

    use super::*;

    #[tokio::test]
    async fn a_full_queue_refuses_and_whoever_waits_gets_a_permit() {
        let queue = WorkQueue::new(1, 1);
        let first = queue.acquire().await.unwrap();
        let mut second = std::pin::pin!(queue.acquire());
        assert!(second.as_mut().now_or_never().is_none());
        assert!(matches!(
            queue.acquire().await,
            Err(Refusal::Unavailable { .. })
        ));
        drop(first);
        let second = second.await.unwrap();
        drop(second);
        assert!(queue.acquire().await.is_ok());
    }
}
