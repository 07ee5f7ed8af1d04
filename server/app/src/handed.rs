//! What a change has read of its season, handed to whoever makes the pages of the new version, who would
//! read the same.

use std::sync::Arc;

use league::ids::{ClubId, SeasonId};
use store::changes::once_committed;

use crate::Desk;
use crate::keeper::Keeper;
use crate::standings::Board;

/// Seasons at most: each board is taken at once where somebody looks at it, and never where nobody does.
const MOST: usize = 16;

/// The newest board of each season.
#[derive(Clone)]
pub(crate) struct Handed(Keeper<(ClubId, SeasonId), Arc<Board>>);

impl Default for Handed {
    fn default() -> Self {
        Self(Keeper::new(MOST, |_| 1))
    }
}

impl Handed {
    /// Hands over once the running transaction has committed: a version that is taken back never was.
    pub fn once_committed(&self, board: Board) {
        let keeper = self.0.clone();
        once_committed(Box::new(move || {
            keeper.keep(board.season.key(), Arc::new(board));
        }));
    }
}

impl Desk {
    /// The board of this version, if this process has made the version and nobody took it. It stood so
    /// when the change was made: whoever keeps it looks at the clock once more before showing it.
    #[must_use]
    pub fn take_board(&self, club: ClubId, season: SeasonId, version: i64) -> Option<Board> {
        let board = self.handed.0.take(&(club, season))?;
        let is_meant = board.season.version == version;
        Arc::into_inner(board).filter(|_| is_meant)
    }
}
