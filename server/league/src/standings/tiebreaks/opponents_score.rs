//! Opponents' score sum (Buchholz; FIDE Handbook C.07, art. 8.1).

use super::inputs::{Board, Exact};
use super::opponents;

pub(super) fn value(board: &Board<'_>, player: usize) -> Exact {
    Exact::new(opponents::sum(opponents::met(board, player)), 2)
}
