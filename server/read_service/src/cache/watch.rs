//! Keeps the cache current: listens to the database's notices, and polls in case one is lost.

use std::sync::Arc;
use std::time::Duration;

use app::Refusal;
use tokio::time::{MissedTickBehavior, interval, sleep};

use crate::cache::page_cache::PageCache;
use crate::cache::rebuild::run_rebuilds;

/// How often the versions of all seasons in use are asked for.
const POLL_INTERVAL: Duration = Duration::from_millis(500);

/// Pause before listening again, once a connection broke.
const RECONNECT_DELAY: Duration = Duration::from_secs(1);

/// How often to ask whether a replica was promoted: only a primary sends notices.
const PROMOTION_POLL_INTERVAL: Duration = Duration::from_secs(5);

/// Runs for as long as the server does, within a `LocalSet`.
pub async fn keep_current(cache: Arc<PageCache>) {
    tokio::join!(poll(&cache), listen(&cache), run_rebuilds(&cache));
}

async fn poll(cache: &PageCache) {
    let mut ticks = interval(POLL_INTERVAL);
    ticks.set_missed_tick_behavior(MissedTickBehavior::Delay);
    loop {
        ticks.tick().await;
        if let Err(refusal) = cache.confirm_all().await {
            tracing::warn!(?refusal, "versions could not be confirmed; trying again");
        }
    }
}

async fn listen(cache: &PageCache) {
    loop {
        if let Ok(Some(_)) = cache.app().find_replica_status().await {
            tracing::debug!("a replica sends no notices; polling only");
            sleep(PROMOTION_POLL_INTERVAL).await;
            continue;
        }
        let Err(refusal) = listen_until_disconnected(cache).await;
        tracing::warn!(?refusal, "no notices of changes; polling only");
        sleep(RECONNECT_DELAY).await;
    }
}

async fn listen_until_disconnected(cache: &PageCache) -> Result<std::convert::Infallible, Refusal> {
    let mut changes = cache.app().listen().await?;
    loop {
        cache.on_remote_change(changes.next().await?);
    }
}
