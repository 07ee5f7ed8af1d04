//! Opponents' score sum without the lowest and the highest (Median-1; FIDE Handbook C.07,
//! art. 14.3).

use super::inputs::{Exact, TieBreakInputs};
use super::opponents;

pub(super) fn value(inputs: &TieBreakInputs<'_>, player: usize) -> Exact {
    let met = opponents::met(inputs, player);
    let cut = opponents::lowest(met);
    let lowest = cut.and_then(|at| met.get(at)).map_or(0, |met| met.score);
    let others = met.iter().enumerate().filter(|(at, _)| Some(*at) != cut);
    let highest = others.map(|(_, met)| met.score).max().unwrap_or(0);
    Exact::new(opponents::sum(met) - lowest - highest, 2)
}
