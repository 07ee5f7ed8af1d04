//! Runs CPU-bound work on a blocking thread, so that the threads that answer requests stay free.

use crate::Refusal;

/// # Errors
/// [`Refusal::Internal`] when the work panicked.
pub(crate) async fn run_blocking<T: Send + 'static>(
    work: impl FnOnce() -> T + Send + 'static,
) -> Result<T, Refusal> {
    tokio::task::spawn_blocking(work)
        .await
        .map_err(|cause| Refusal::Internal(cause.to_string()))
}
