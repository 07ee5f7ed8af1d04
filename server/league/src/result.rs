//! Results of games: counts, the score computed from them, and the slip's way to a result.

mod counts;
mod score;
mod slip;
mod typed;

use crate::side::Side;

pub use counts::{ArmyPoints, CountFault, CountFaultKind, GameCounts, LegCounts, SideCounts};
pub use score::{GameScore, ItemScore, LegScore, Verdict, score};
pub use slip::{Confirmation, Dispute, ResultReport, Ruling, SettledResult, Slip, SlipRefusal};
pub use typed::TypedResult;

/// How a game of two players ended.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Played to the end.
    Played(GameScore),
    /// Given up during play.
    Conceded {
        by: Side,
        /// The score at that moment, where it was counted.
        score: Option<GameScore>,
    },
    /// One side was not there, or gave up before the first turn.
    NoShow {
        /// Who was not there.
        absent: Side,
        /// Whether word was given in time.
        notice: AbsenceNotice,
    },
    /// Neither side was there, or both lose by ruling.
    DoubleLoss,
    /// Struck from the record: nobody gets anything and the week counts as unplayed.
    Void,
}

/// Whether an absence was announced in time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum AbsenceNotice {
    /// Announced before the season's time.
    Given,
    NotGiven,
}

impl Outcome {
    /// The score of the table, where there is one.
    pub fn score(&self) -> Option<&GameScore> {
        match self {
            Self::Played(score) => Some(score),
            Self::Conceded { score, .. } => score.as_ref(),
            Self::NoShow { .. } | Self::DoubleLoss | Self::Void => None,
        }
    }

    /// Whether models met on a table.
    pub fn was_played(&self) -> bool {
        matches!(self, Self::Played(_) | Self::Conceded { .. })
    }

    /// Whether two reports say the same. The scores of the legs decide, not the counts behind them:
    /// "14 to 9" and "9 to 14" agree even where one side forgot which item gave the points.
    pub fn agrees_with(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Played(a), Self::Played(b)) => a.same_totals(b),
            (Self::Conceded { by: a, score: x }, Self::Conceded { by: b, score: y }) => {
                a == b
                    && match (x, y) {
                        (Some(x), Some(y)) => x.same_totals(y),
                        (None, None) => true,
                        _ => false,
                    }
            }
            _ => self == other,
        }
    }
}
