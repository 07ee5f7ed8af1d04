//! The rebuild worker: once a season has changed, the pages in use are rendered again from one snapshot, on
//! the background thread, and replaced all at once.
//!
//! Readers are served the old pages meanwhile. Only the writer waits, so that whoever reads after the write
//! was acknowledged sees it.

use league::keys::SeasonKey;
use std::collections::HashMap;
use std::sync::Arc;

use app::Refusal;
use app::standings::{Board, find_board};
use tokio::sync::oneshot;
use tokio::task::spawn_local;

use crate::cache::cached_page::CachedPage;
use crate::cache::page_cache::PageCache;
use crate::cache::season_entry::SeasonEntry;

/// A request to rebuild the pages of a season that has a newer version.
pub(crate) struct RebuildJob {
    pub key: SeasonKey,
    pub entry: Arc<SeasonEntry>,
    pub version: i64,
    /// The season at that version, from whoever made it in this process.
    pub board: Option<Board>,
    /// Signalled once nothing older is served.
    pub done: Option<oneshot::Sender<()>>,
}

/// Runs rebuilds for as long as the server runs, those of one season one after the other.
pub(crate) async fn run_rebuilds(cache: &Arc<PageCache>) {
    while let Some(job) = cache.next_rebuild().await {
        spawn_local(run_job(Arc::clone(cache), job));
    }
}

async fn run_job(cache: Arc<PageCache>, job: RebuildJob) {
    let RebuildJob {
        key,
        entry,
        version,
        board,
        done,
    } = job;
    match rebuild(&cache, key, &entry, version, board).await {
        Ok(()) => {}
        Err(Refusal::NotFound) => cache.evict(key),
        Err(refusal) => {
            tracing::warn!(?refusal, "pages could not be rebuilt; withdrawing them");
            entry.raise_version(version);
        }
    }
    if let Some(done) = done {
        // The writer may have stopped waiting.
        let _ = done.send(());
    }
}

/// Of several changes at the same time the first rebuild serves all, and the others find nothing to do.
async fn rebuild(
    cache: &PageCache,
    key: SeasonKey,
    entry: &SeasonEntry,
    version: i64,
    board: Option<Board>,
) -> Result<(), Refusal> {
    let _building = entry.build_lock.lock().await;
    if entry.version() >= version {
        return Ok(());
    }
    let queried_at = cache.clock().elapsed();
    let is_queried = board.is_none();
    let board = match board {
        Some(board) => board,
        None => find_board(cache.app(), key).await?,
    };
    let mut pages = HashMap::new();
    for (page_key, older) in entry.requested_pages() {
        // What no longer exists is dropped: whoever asks again gets 404.
        let Ok(body) = page_key.resource.render(&board, page_key.format) else {
            continue;
        };
        let page = CachedPage::new(&board, page_key.format, body);
        page.encode_like(&older, cache.counters());
        pages.insert(page_key, Arc::new(page));
    }
    entry.replace_pages(board.season.version, pages);
    // Only a query confirms that there is no newer version.
    if is_queried {
        entry.confirm(board.season.version, queried_at);
    }
    Ok(())
}
