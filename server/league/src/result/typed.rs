//! What a side typed, before the server has made a score of it.

use crate::scenario::ScenarioSheet;
use crate::side::Side;

use super::counts::{Armies, Counts, Impossible};
use super::score::{GameScore, score};
use super::{Notice, Outcome};

/// How a game ended, as typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Typed {
    /// Played to the end.
    Played(Counts),
    /// Given up during play.
    Conceded {
        /// Who gave up.
        by: Side,
        /// What was counted by then.
        counts: Option<Counts>,
    },
    /// One side was not there, or gave up before the first turn.
    NoShow {
        /// Who was not there.
        absent: Side,
        /// Whether word was given in time.
        notice: Notice,
    },
    /// Neither side was there, or both lose by ruling.
    DoubleLoss,
    /// Struck from the record.
    Void,
}

impl Typed {
    /// What it means on `sheet` with `armies`.
    ///
    /// # Errors
    /// Every count that cannot be.
    pub fn outcome(
        self,
        sheet: &ScenarioSheet,
        armies: &Armies,
    ) -> Result<Outcome, Vec<Impossible>> {
        let score_of = |counts: Counts| -> Result<GameScore, _> { score(sheet, &counts, armies) };
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
