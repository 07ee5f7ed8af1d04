//! Rounds as one player has them: result, points, and whether they were played.

use crate::points::LeaguePoints;
use crate::result::{GameScore, Outcome, Verdict};
use crate::side::Side;
use crate::week::WeekNo;

/// One round of one player. Results are in half points: 2 for a win, 1 for a draw.
#[derive(Clone, Copy, Debug)]
pub struct PlayerRound {
    pub week: WeekNo,
    pub result: i64,
    pub league_points: LeaguePoints,
    pub kind: RoundKind,
}

#[derive(Clone, Copy, Debug)]
pub enum RoundKind {
    Played {
        opponent: usize,
        margin: i64,
        harder_role: bool,
    },
    Bye,
    /// The opponent did not come.
    OpponentAbsent,
    /// Away by the player's own choice: not there, not yet joined, or gone.
    Away,
}

impl RoundKind {
    pub fn is_played(self) -> bool {
        matches!(self, Self::Played { .. })
    }
}

/// A game from the view of one side.
#[derive(Clone, Copy)]
pub struct GameSide {
    pub side: Side,
    pub opponent: usize,
    pub harder_role: bool,
}

/// The half points and the round that an outcome makes for one side; `None` when it was struck. Who
/// won by a score is for the season to say.
pub fn round_result(
    outcome: &Outcome,
    view: GameSide,
    verdict: impl Fn(&GameScore) -> Verdict,
) -> Option<(i64, RoundKind)> {
    let half_points = |verdict| match verdict {
        Verdict::Won(winner) if winner == view.side => 2,
        Verdict::Drawn => 1,
        Verdict::Won(_) => 0,
    };
    let margin = outcome.score().map_or(0, |score| {
        i64::from(score.total[view.side]) - i64::from(score.total[view.side.other()])
    });
    let played = RoundKind::Played {
        opponent: view.opponent,
        margin,
        harder_role: view.harder_role,
    };
    match outcome {
        Outcome::Played(score) => Some((half_points(verdict(score)), played)),
        Outcome::Conceded { by, .. } => Some((half_points(Verdict::Won(by.other())), played)),
        Outcome::NoShow { absent, .. } if *absent == view.side => Some((0, RoundKind::Away)),
        Outcome::NoShow { .. } => Some((2, RoundKind::OpponentAbsent)),
        Outcome::DoubleLoss => Some((0, RoundKind::Away)),
        Outcome::Void => None,
    }
}

/// A round that the player stayed away from.
pub const fn away(week: WeekNo, league_points: LeaguePoints) -> PlayerRound {
    PlayerRound {
        week,
        result: 0,
        league_points,
        kind: RoundKind::Away,
    }
}
