//! Opponents' scores: sums over the scores that a player met.

use super::inputs::{OpponentScore, TieBreakInputs};

/// The scores a player met.
pub(super) fn met<'b>(inputs: &'b TieBreakInputs<'_>, player: usize) -> &'b [OpponentScore] {
    inputs.met.get(player)
}

/// The sum of all scores met.
pub(super) fn sum(met: &[OpponentScore]) -> i64 {
    met.iter().map(|met| met.score).sum()
}

/// Which one is cut as the lowest: of the voluntary ones first, as long as there are any.
pub(super) fn lowest(met: &[OpponentScore]) -> Option<usize> {
    let lowest = met
        .iter()
        .enumerate()
        .min_by_key(|(_, met)| (!met.voluntary, met.score));
    lowest.map(|(at, _)| at)
}
