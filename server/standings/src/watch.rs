//! Keeps a shelf current: hears the database's notices, and looks by itself should one be lost.

use std::sync::Arc;
use std::time::Duration;

use app::Refusal;
use tokio::time::{MissedTickBehavior, interval, sleep};

use crate::shelf::Shelf;
use crate::turn::turn_pages;

/// How often all versions are looked at.
const LOOK: Duration = Duration::from_millis(500);

/// How long to wait before listening again, once a connection broke.
const PAUSE: Duration = Duration::from_secs(1);

/// How long to wait before asking whether a replica has become a primary, which sends notices.
const UNTIL_PROMOTED: Duration = Duration::from_secs(5);

/// Runs for as long as the server does, within a `LocalSet`.
pub async fn keep_current(shelf: Arc<Shelf>) {
    tokio::join!(look(&shelf), listen(&shelf), turn_pages(&shelf));
}

async fn look(shelf: &Shelf) {
    let mut beat = interval(LOOK);
    beat.set_missed_tick_behavior(MissedTickBehavior::Delay);
    loop {
        beat.tick().await;
        if let Err(refusal) = shelf.confirm_all().await {
            tracing::warn!(?refusal, "versions could not be confirmed; trying again");
        }
    }
}

async fn listen(shelf: &Shelf) {
    loop {
        if let Ok(Some(_)) = shelf.desk().find_replica().await {
            tracing::debug!("a replica sends no notices; looking only");
            sleep(UNTIL_PROMOTED).await;
            continue;
        }
        let Err(refusal) = listen_while_it_lasts(shelf).await;
        tracing::warn!(?refusal, "no notices of changes; looking only");
        sleep(PAUSE).await;
    }
}

async fn listen_while_it_lasts(shelf: &Shelf) -> Result<std::convert::Infallible, Refusal> {
    let mut changes = shelf.desk().listen().await?;
    loop {
        shelf.hear(changes.next().await?);
    }
}
