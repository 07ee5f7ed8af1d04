//! League points for painting, before caps. Common practice, no source.

use super::inputs::{Board, Exact};

pub(super) fn value(board: &Board<'_>, player: usize) -> Exact {
    let points = board
        .painting_points
        .get(player)
        .copied()
        .unwrap_or_default();
    Exact::from_integer(points.get().into())
}
