//! Sums over the scores met.

use super::inputs::{Board, Met};

/// The scores a player met.
pub(super) fn met<'b>(board: &'b Board<'_>, player: usize) -> &'b [Met] {
    board.met.of(player)
}

/// The sum of all scores met.
pub(super) fn sum(met: &[Met]) -> i64 {
    met.iter().map(|met| met.score).sum()
}

/// Which one is cut as the lowest: of the voluntary ones first, as long as there are any.
pub(super) fn lowest(met: &[Met]) -> Option<usize> {
    let lowest = met
        .iter()
        .enumerate()
        .min_by_key(|(_, met)| (!met.voluntary, met.score));
    lowest.map(|(at, _)| at)
}
