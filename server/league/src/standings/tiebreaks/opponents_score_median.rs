//! Opponents' score sum without the lowest and the highest (Median-1; FIDE Handbook C.07,
//! art. 14.3).

use super::super::board::Board;
use super::{Exact, opponents};

pub(super) fn value(board: &Board, player: usize) -> Exact {
    let mut met = opponents::met(board, player);
    opponents::cut_lowest(&mut met);
    opponents::cut_highest(&mut met);
    Exact::new(met.iter().map(|met| met.score).sum(), 2)
}
