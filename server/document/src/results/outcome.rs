//! Outcomes of games as JSON: as reported, and as they stand.

use league::result::{AbsenceNotice, GameCounts, GameScore, Outcome, TypedResult};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::score::{CountsDocument, GameScoreDocument};
use super::sides::SideDocument;
use crate::fault::DocumentFault;
use crate::mirror_enum::mirror_enum;

/// What a player reports: counts, from which the server makes the score.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum TypedResultDocument {
    /// Played to the end.
    Played {
        /// What was counted.
        counts: CountsDocument,
    },
    /// Given up during play.
    Conceded {
        /// Who gave up.
        by: SideDocument,
        /// What was counted by then.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        counts: Option<CountsDocument>,
    },
    /// One side was not there, or gave up before the first turn.
    NoShow {
        /// Who was not there.
        absent: SideDocument,
        /// Whether word was given in time.
        notice: NoticeDocument,
    },
    /// Neither side was there, or both lose by ruling.
    DoubleLoss,
    /// Struck from the record; by ruling only.
    Void,
}

/// How a game ended, with its score: stored, shown and exported.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum OutcomeDocument {
    /// Played to the end.
    Played {
        /// The score.
        score: GameScoreDocument,
    },
    /// Given up during play.
    Conceded {
        /// Who gave up.
        by: SideDocument,
        /// The score at that moment.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        score: Option<GameScoreDocument>,
    },
    /// One side was not there.
    NoShow {
        /// Who was not there.
        absent: SideDocument,
        /// Whether word was given in time.
        notice: NoticeDocument,
    },
    /// Both lose.
    DoubleLoss,
    /// Struck from the record.
    Void,
}

mirror_enum! {
    /// Whether an absence was announced in time.
    NoticeDocument is AbsenceNotice {
        /// Announced in time.
        Given,
        /// Not announced.
        NotGiven,
    }
}

impl From<&Outcome> for OutcomeDocument {
    fn from(outcome: &Outcome) -> Self {
        match outcome {
            Outcome::Played(score) => Self::Played {
                score: score.into(),
            },
            Outcome::Conceded { by, score } => Self::Conceded {
                by: (*by).into(),
                score: score.as_ref().map(Into::into),
            },
            Outcome::NoShow { absent, notice } => Self::NoShow {
                absent: (*absent).into(),
                notice: (*notice).into(),
            },
            Outcome::DoubleLoss => Self::DoubleLoss,
            Outcome::Void => Self::Void,
        }
    }
}

impl TryFrom<OutcomeDocument> for Outcome {
    type Error = Vec<DocumentFault>;

    fn try_from(document: OutcomeDocument) -> Result<Self, Vec<DocumentFault>> {
        Ok(match document {
            OutcomeDocument::Played { score } => Self::Played(score.try_into()?),
            OutcomeDocument::Conceded { by, score } => Self::Conceded {
                by: by.into(),
                score: score.map(GameScore::try_from).transpose()?,
            },
            OutcomeDocument::NoShow { absent, notice } => Self::NoShow {
                absent: absent.into(),
                notice: notice.into(),
            },
            OutcomeDocument::DoubleLoss => Self::DoubleLoss,
            OutcomeDocument::Void => Self::Void,
        })
    }
}

impl TryFrom<TypedResultDocument> for TypedResult {
    type Error = Vec<DocumentFault>;

    fn try_from(document: TypedResultDocument) -> Result<Self, Vec<DocumentFault>> {
        let within_counts = |faults: Vec<DocumentFault>| {
            let deeper = faults.into_iter().map(|fault| DocumentFault {
                pointer: format!("/counts{}", fault.pointer),
                ..fault
            });
            deeper.collect::<Vec<_>>()
        };
        let read = |counts| GameCounts::try_from(counts).map_err(within_counts);
        Ok(match document {
            TypedResultDocument::Played { counts } => Self::Played(read(counts)?),
            TypedResultDocument::Conceded { by, counts } => Self::Conceded {
                by: by.into(),
                counts: counts.map(read).transpose()?,
            },
            TypedResultDocument::NoShow { absent, notice } => Self::NoShow {
                absent: absent.into(),
                notice: notice.into(),
            },
            TypedResultDocument::DoubleLoss => Self::DoubleLoss,
            TypedResultDocument::Void => Self::Void,
        })
    }
}
