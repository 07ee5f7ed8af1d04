//! Games won on the table (FIDE Handbook C.07, art. 7.2: games won over the board). Byes and
//! absences of the opponent are no wins here.

use super::inputs::{Exact, TieBreakInputs};

pub(super) fn value(inputs: &TieBreakInputs<'_>, player: usize) -> Exact {
    let rounds = inputs.rounds.get(player).iter();
    let won = rounds.filter(|round| round.kind.is_played() && round.result == 2);
    Exact::from_integer(i64::try_from(won.count()).unwrap_or(i64::MAX))
}
