//! What each round of a player brings to the sums over opponents.

use super::super::board::{Board, Round, RoundKind};
use super::UnplayedRounds;

/// The score met in one round, doubled, with the own result in half points.
#[derive(Clone, Copy, Debug)]
pub(super) struct Met {
    pub(super) score: i64,
    pub(super) result: i64,
    /// Missed by the player's own choice: cut before all others (C.07, art. 16.5).
    pub(super) voluntary: bool,
}

/// The scores met, round by round, unplayed rounds as the season says.
pub(super) fn met(board: &Board, player: usize) -> Vec<Met> {
    let rounds = board.rounds.get(player).map_or(&[][..], Vec::as_slice);
    let own = board.score.get(player).copied().unwrap_or(0);
    let mut before = 0;
    let mut left = i64::try_from(rounds.len()).unwrap_or(0);
    let mut met = Vec::with_capacity(rounds.len());
    for round in rounds {
        left -= 1;
        let unplayed = match board.unplayed {
            UnplayedRounds::LeftOut => None,
            UnplayedRounds::VirtualOpponent => Some(virtual_opponent(board, round, before, left)),
            UnplayedRounds::OwnScore => Some(own),
        };
        let score = match round.kind {
            RoundKind::Played { opponent, .. } => board.score_for_opponents.get(opponent).copied(),
            _ => unplayed,
        };
        met.extend(score.map(|score| Met {
            score,
            result: round.result,
            voluntary: matches!(round.kind, RoundKind::Away),
        }));
        before += board.worth(round);
    }
    met
}

/// `Svon = S_before + (1 - result) + 0.5 * (n - R)` of the edition to 2022, in the season's basis.
fn virtual_opponent(board: &Board, round: &Round, before: i64, rounds_left: i64) -> i64 {
    before + (board.win - board.worth(round)) + board.draw * rounds_left
}

/// Takes the lowest out: of the voluntary ones first, as long as there are any.
pub(super) fn cut_lowest(met: &mut Vec<Met>) {
    let lowest = met
        .iter()
        .enumerate()
        .min_by_key(|(_, met)| (!met.voluntary, met.score));
    if let Some((at, _)) = lowest {
        met.swap_remove(at);
    }
}

/// Takes the highest out.
pub(super) fn cut_highest(met: &mut Vec<Met>) {
    if let Some((at, _)) = met.iter().enumerate().max_by_key(|(_, met)| met.score) {
        met.swap_remove(at);
    }
}
