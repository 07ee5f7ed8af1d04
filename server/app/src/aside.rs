//! Long thinking is done aside, so that no other request waits for it.

use crate::Refusal;

/// # Errors
/// [`Refusal::Broken`] when the work panicked.
pub(crate) async fn aside<T: Send + 'static>(
    work: impl FnOnce() -> T + Send + 'static,
) -> Result<T, Refusal> {
    tokio::task::spawn_blocking(work)
        .await
        .map_err(|cause| Refusal::Broken(cause.to_string()))
}
