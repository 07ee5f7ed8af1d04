//! Games won with the harder role of the scenario: the league's counterpart of games won with the
//! black pieces (FIDE Handbook C.07, art. 7.4).

use crate::standings::rounds::RoundKind;

use super::inputs::{Exact, TieBreakInputs};

pub(super) fn value(inputs: &TieBreakInputs<'_>, player: usize) -> Exact {
    let rounds = inputs.rounds.get(player).iter();
    let won = rounds.filter(|round| {
        let harder = matches!(
            round.kind,
            RoundKind::Played {
                harder_role: true,
                ..
            }
        );
        harder && round.result == 2
    });
    Exact::from_integer(i64::try_from(won.count()).unwrap_or(i64::MAX))
}
