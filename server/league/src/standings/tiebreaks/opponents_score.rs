//! Opponents' score sum (Buchholz; FIDE Handbook C.07, art. 8.1).

use super::inputs::{Exact, TieBreakInputs};
use super::opponents;

pub(super) fn value(inputs: &TieBreakInputs<'_>, player: usize) -> Exact {
    Exact::new(opponents::sum(opponents::met(inputs, player)), 2)
}
