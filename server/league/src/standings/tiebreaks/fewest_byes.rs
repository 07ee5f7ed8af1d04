//! Number of byes; fewer is better. Common practice, no source.

use crate::standings::rounds::RoundKind;

use super::inputs::{Exact, TieBreakInputs};

pub(super) fn value(inputs: &TieBreakInputs<'_>, player: usize) -> Exact {
    let rounds = inputs.rounds.get(player).iter();
    let byes = rounds
        .filter(|round| matches!(round.kind, RoundKind::Bye))
        .count();
    Exact::from_integer(i64::try_from(byes).unwrap_or(i64::MAX))
}
