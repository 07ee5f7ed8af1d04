//! Sonneborn–Berger: own result (1, ½, 0) times the opponent's score, added up (FIDE Handbook C.07,
//! art. 9.1). The league keeps 1, ½ and 0 here also where opponents' scores are league points.

use super::inputs::{Exact, TieBreakInputs};
use super::opponents;

pub(super) fn value(inputs: &TieBreakInputs<'_>, player: usize) -> Exact {
    let met = opponents::met(inputs, player);
    Exact::new(met.iter().map(|met| met.result * met.score).sum(), 4)
}
