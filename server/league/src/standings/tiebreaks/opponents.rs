//! Sums over the scores met.

use super::super::board::Board;

/// The score met in one round, doubled, with the own result in half points.
#[derive(Clone, Copy, Debug)]
pub(in super::super) struct Met {
    pub(in super::super) score: i64,
    pub(in super::super) result: i64,
    /// Missed by the player's own choice: cut before all others (C.07, art. 16.5).
    pub(in super::super) voluntary: bool,
}

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
