//! A typed result: what a side enters, before the server has computed a score.

use crate::scenario::ScenarioSheet;
use crate::side::Side;

use super::counts::{ArmyPoints, CountFault, GameCounts};
use super::score::{GameScore, score};
use super::{AbsenceNotice, Outcome};

/// How a game ended, as typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TypedResult {
    /// Played to the end.
    Played(GameCounts),
    /// Given up during play.
    Conceded {
        by: Side,
        /// What was counted by then.
        counts: Option<GameCounts>,
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
    /// Struck from the record.
    Void,
}

impl TypedResult {
    /// What it means on `sheet` with `armies`.
    ///
    /// # Errors
    /// Every count that cannot be.
    pub fn outcome(
        self,
        sheet: &ScenarioSheet,
        armies: &ArmyPoints,
    ) -> Result<Outcome, Vec<CountFault>> {
        let score_of =
            |counts: GameCounts| -> Result<GameScore, _> { score(sheet, &counts, armies) };
        Ok(match self {
            Self::Played(counts) => Outcome::Played(score_of(counts)?),
            Self::Conceded { by, counts } => Outcome::Conceded {
                by,
                score: counts.map(score_of).transpose()?,
            },
            Self::NoShow { absent, notice } => Outcome::NoShow { absent, notice },
            Self::DoubleLoss => Outcome::DoubleLoss,
            Self::Void => Outcome::Void,
        })
    }
}
