//! Turning the page: once a season has changed, the pages that are in use are made anew from one
//! snapshot, away from the threads that answer, and put in place all at once. Nobody waits for a page
//! meanwhile but whoever changed something and wants to be sure.

use std::collections::HashMap;
use std::sync::Arc;

use app::Refusal;
use app::standings::find_board;
use tokio::sync::oneshot;
use tokio::task::spawn_local;

use crate::kept::Kept;
use crate::page::Page;
use crate::shelf::{Key, Shelf};

/// A season that has a newer version, and whom to tell once it is served.
pub(crate) struct Turn {
    pub key: Key,
    pub kept: Arc<Kept>,
    pub version: i64,
    pub done: Option<oneshot::Sender<()>>,
}

/// Turns pages for as long as the server runs, those of each season one after the other.
pub(crate) async fn turn_pages(shelf: &Arc<Shelf>) {
    while let Some(turn) = shelf.next_turn().await {
        spawn_local(carry_out(Arc::clone(shelf), turn));
    }
}

async fn carry_out(shelf: Arc<Shelf>, turn: Turn) {
    let Turn {
        key,
        kept,
        version,
        done,
    } = turn;
    match make_anew(&shelf, key, &kept, version).await {
        Ok(()) => {}
        Err(Refusal::NotFound) => shelf.forget(key),
        Err(refusal) => {
            tracing::warn!(?refusal, "pages could not be made; withdrawing them");
            kept.raise(version);
        }
    }
    if let Some(done) = done {
        // Whoever asked may have given up.
        let _ = done.send(());
    }
}

/// Of several changes at the same time the first turn serves them all, and the others find nothing
/// to do.
async fn make_anew(shelf: &Shelf, key: Key, kept: &Kept, version: i64) -> Result<(), Refusal> {
    let _turn = kept.making.lock().await;
    if kept.version() >= version {
        return Ok(());
    }
    let asked = shelf.clock().running();
    let (desk, (club, season)) = (shelf.desk(), key);
    let handed = desk.take_board(club, season, version);
    let is_handed = handed.is_some();
    let board = match handed {
        Some(board) => board,
        None => find_board(desk, club, season).await?,
    };
    let mut pages = HashMap::new();
    for (wanted, older) in kept.pages_in_use() {
        // What is no longer there is not made: whoever asks again is told so.
        let Ok(body) = wanted.resource.write(&board, wanted.format) else {
            continue;
        };
        let page = Page::new(&board, wanted.format, body);
        page.encode_as(&older, shelf.counts());
        pages.insert(wanted, Arc::new(page));
    }
    kept.turn(board.season.version, pages);
    // Only a look at the database confirms that there is none newer.
    if !is_handed {
        kept.confirm(board.season.version, asked);
    }
    Ok(())
}
