//! League points for painting, before caps. Common practice, no source.

use super::inputs::{Exact, TieBreakInputs};

pub(super) fn value(inputs: &TieBreakInputs<'_>, player: usize) -> Exact {
    let points = inputs
        .painting_points
        .get(player)
        .copied()
        .unwrap_or_default();
    Exact::from_integer(points.get().into())
}
