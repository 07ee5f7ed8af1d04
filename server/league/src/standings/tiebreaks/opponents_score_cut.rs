//! Opponents' score sum without the lowest (Cut-1; FIDE Handbook C.07, art. 14.1).

use super::super::board::Board;
use super::{Exact, opponents};

pub(super) fn value(board: &Board, player: usize) -> Exact {
    let mut met = opponents::met(board, player);
    opponents::cut_lowest(&mut met);
    Exact::new(met.iter().map(|met| met.score).sum(), 2)
}
