//! What a change has read of its season, handed to whoever makes the pages of the new version, who would
//! read the same.

use std::sync::Arc;

use league::ids::{ClubId, SeasonId};
use store::changes::once_committed;

use crate::cache::Cache;
use crate::standings::Board;

/// Seasons at most: each board is taken at once where somebody looks at it, and never where nobody does.
const MAX_SEASONS: usize = 16;

/// The newest board of each season.
#[derive(Clone)]
pub(crate) struct Handed(Cache<(ClubId, SeasonId), Arc<Board>>);

impl Default for Handed {
    fn default() -> Self {
        Self(Cache::new(MAX_SEASONS, |_| 1))
    }
}

impl Handed {
    /// The board of a season, handed out once.
    pub fn take(&self, key: (ClubId, SeasonId)) -> Option<Board> {
        Arc::into_inner(self.0.remove(&key)?)
    }

    /// Hands over once the running transaction has committed: a version that is taken back never was.
    pub fn once_committed(&self, board: Board) {
        let cache = self.0.clone();
        once_committed(Box::new(move || {
            cache.insert(board.season.key(), Arc::new(board));
        }));
    }
}
