//! Opponents' score sum without the lowest (Cut-1; FIDE Handbook C.07, art. 14.1).

use super::inputs::{Exact, TieBreakInputs};
use super::opponents;

pub(super) fn value(inputs: &TieBreakInputs<'_>, player: usize) -> Exact {
    let met = opponents::met(inputs, player);
    let lowest = opponents::lowest(met).and_then(|at| met.get(at));
    Exact::new(opponents::sum(met) - lowest.map_or(0, |met| met.score), 2)
}
