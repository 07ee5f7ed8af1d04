//! How a game ended, as it is reported and as it stands.

use league::result::{Counts, GameScore, Notice, Outcome, Typed};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::{CountsDocument, GameScoreDocument};
use crate::both::SideDocument;
use crate::fault::Fault;
use crate::words::words;

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

words! {
    /// Whether an absence was announced in time.
    NoticeDocument is Notice {
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
    type Error = Vec<Fault>;

    fn try_from(document: OutcomeDocument) -> Result<Self, Vec<Fault>> {
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

impl TryFrom<TypedResultDocument> for Typed {
    type Error = Vec<Fault>;

    fn try_from(document: TypedResultDocument) -> Result<Self, Vec<Fault>> {
        let within_counts = |faults: Vec<Fault>| {
            let deeper = faults.into_iter().map(|fault| Fault {
                pointer: format!("/counts{}", fault.pointer),
                ..fault
            });
            deeper.collect::<Vec<_>>()
        };
        let read = |counts| Counts::try_from(counts).map_err(within_counts);
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
