//! Opponents' score sum without the lowest (Cut-1; FIDE Handbook C.07, art. 14.1).

use super::inputs::{Board, Exact};
use super::opponents;

pub(super) fn value(board: &Board<'_>, player: usize) -> Exact {
    let met = opponents::met(board, player);
    let lowest = opponents::lowest(met).and_then(|at| met.get(at));
    Exact::new(opponents::sum(met) - lowest.map_or(0, |met| met.score), 2)
}
