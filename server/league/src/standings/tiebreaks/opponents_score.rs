//! Opponents' score sum (Buchholz; FIDE Handbook C.07, art. 8.1).

use super::super::board::Board;
use super::{Exact, opponents};

pub(super) fn value(board: &Board, player: usize) -> Exact {
    let met = opponents::met(board, player);
    Exact::new(met.iter().map(|met| met.score).sum(), 2)
}
