//! Differences of game points over all played games, added up. Common practice, no source.

use crate::standings::rounds::RoundKind;

use super::inputs::{Exact, TieBreakInputs};

pub(super) fn value(inputs: &TieBreakInputs<'_>, player: usize) -> Exact {
    let rounds = inputs.rounds.get(player).iter();
    let margins = rounds.map(|round| match round.kind {
        RoundKind::Played { margin, .. } => margin,
        _ => 0,
    });
    Exact::from_integer(margins.sum())
}
