//! What the clock does by itself: lists are opened when their deadline is over, silence confirms, and
//! what is revealed makes a version.

use std::time::Duration;

use app::{Desk, Refusal};
use tokio::time::{MissedTickBehavior, interval};

/// How often the server looks whether a moment has come. Nothing depends on it being exact: lists
/// that are not opened yet stay sealed, and readers count silence in by themselves.
const EVERY: Duration = Duration::from_millis(500);

/// Looks for as long as the server runs.
pub async fn keep(desk: Desk) {
    let mut beat = interval(EVERY);
    beat.set_missed_tick_behavior(MissedTickBehavior::Delay);
    loop {
        beat.tick().await;
        if let Err(refusal) = act(&desk).await {
            tracing::warn!(?refusal, "what was due could not be done; trying again");
        }
    }
}

async fn act(desk: &Desk) -> Result<(), Refusal> {
    let opened = app::lists::open_due_lists(desk).await?;
    let confirmed = app::results::settle_silent_results(desk).await?;
    let told = app::seasons::tell_moments(desk).await?;
    if opened + confirmed + told > 0 {
        tracing::info!(opened, confirmed, told, "moments that had come");
    }
    Ok(())
}
