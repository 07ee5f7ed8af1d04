//! Number of byes; fewer is better. Common practice, no source.

use super::super::board::Board;
use super::super::rounds::RoundKind;
use super::Exact;

pub(super) fn value(board: &Board<'_>, player: usize) -> Exact {
    let rounds = board.rounds.of(player).iter();
    let byes = rounds
        .filter(|round| matches!(round.kind, RoundKind::Bye))
        .count();
    Exact::from_integer(i64::try_from(byes).unwrap_or(i64::MAX))
}
