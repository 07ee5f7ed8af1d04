//! A result slip as JSON: stored, shown and exported.

use chrono::{DateTime, Utc};
use league::ids::{AccountId, RulingId};
use league::name::Text;
use league::result::{Confirmation, Dispute, ResultReport, Ruling, Slip};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use super::outcome::OutcomeDocument;
use super::sides::SideDocument;
use crate::fault::DocumentFault;
use crate::mirror_enum::mirror_enum;

/// The state of a slip.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum SlipDocument {
    /// Nobody has reported.
    Awaited,
    /// One side has; silence confirms at `confirm_due`.
    Reported {
        /// What it said.
        report: SaidDocument,
        /// When silence confirms.
        confirm_due: DateTime<Utc>,
    },
    /// Two sides disagree.
    Disputed {
        /// What was reported first.
        report: SaidDocument,
        /// Who objects.
        by: SideDocument,
        /// Why, in words; absent where only a different report arrived.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        reason: Option<String>,
        /// What that side says instead.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        counter: Option<SaidDocument>,
        /// When.
        at: DateTime<Utc>,
    },
    /// It stands.
    Confirmed {
        /// What was reported first.
        report: SaidDocument,
        /// How it was confirmed.
        how: ConfirmationDocument,
        /// When.
        at: DateTime<Utc>,
    },
    /// A referee decided.
    Ruled {
        /// The ruling.
        ruling: RulingDocument,
    },
}

/// What one side said.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SaidDocument {
    /// Who.
    pub by: SideDocument,
    /// What.
    pub outcome: OutcomeDocument,
    /// When.
    pub at: DateTime<Utc>,
}

/// A referee's decision.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct RulingDocument {
    /// Its identity, named in the ledger.
    pub id: Uuid,
    /// Account of the referee.
    pub referee: Uuid,
    /// What stands.
    pub outcome: OutcomeDocument,
    /// Why.
    pub reason: String,
    /// When.
    pub at: DateTime<Utc>,
}

mirror_enum! {
    /// How a result came to stand without a ruling.
    ConfirmationDocument is Confirmation {
        /// The other side confirmed or reported the same.
        ByOpponent,
        /// Nobody objected in the season's time.
        BySilence,
    }
}

impl From<&Slip> for SlipDocument {
    fn from(slip: &Slip) -> Self {
        match slip {
            Slip::Awaited => Self::Awaited,
            Slip::Reported {
                report,
                confirm_due,
            } => Self::Reported {
                report: report.into(),
                confirm_due: *confirm_due,
            },
            Slip::Disputed { report, dispute } => Self::Disputed {
                report: report.into(),
                by: dispute.by.into(),
                reason: dispute.reason.as_ref().map(|text| text.as_str().to_owned()),
                counter: dispute.counter.as_ref().map(Into::into),
                at: dispute.at,
            },
            Slip::Confirmed { report, how, at } => Self::Confirmed {
                report: report.into(),
                how: (*how).into(),
                at: *at,
            },
            Slip::Ruled(ruling) => Self::Ruled {
                ruling: ruling.into(),
            },
        }
    }
}

impl From<&ResultReport> for SaidDocument {
    fn from(report: &ResultReport) -> Self {
        Self {
            by: report.by.into(),
            outcome: (&report.outcome).into(),
            at: report.at,
        }
    }
}

impl From<&Ruling> for RulingDocument {
    fn from(ruling: &Ruling) -> Self {
        Self {
            id: ruling.id.0,
            referee: ruling.referee.0,
            outcome: (&ruling.outcome).into(),
            reason: ruling.reason.as_str().to_owned(),
            at: ruling.at,
        }
    }
}

impl TryFrom<SlipDocument> for Slip {
    type Error = Vec<DocumentFault>;

    fn try_from(document: SlipDocument) -> Result<Self, Vec<DocumentFault>> {
        Ok(match document {
            SlipDocument::Awaited => Self::Awaited,
            SlipDocument::Reported {
                report,
                confirm_due,
            } => Self::Reported {
                report: report.try_into()?,
                confirm_due,
            },
            SlipDocument::Disputed {
                report,
                by,
                reason,
                counter,
                at,
            } => Self::Disputed {
                report: report.try_into()?,
                dispute: Dispute {
                    reason: reason.map(|text| read_reason(&text)).transpose()?,
                    counter: counter.map(ResultReport::try_from).transpose()?,
                    by: by.into(),
                    at,
                },
            },
            SlipDocument::Confirmed { report, how, at } => Self::Confirmed {
                report: report.try_into()?,
                how: how.into(),
                at,
            },
            SlipDocument::Ruled { ruling } => Self::Ruled(ruling.try_into()?),
        })
    }
}

impl TryFrom<SaidDocument> for ResultReport {
    type Error = Vec<DocumentFault>;

    fn try_from(document: SaidDocument) -> Result<Self, Vec<DocumentFault>> {
        Ok(Self {
            by: document.by.into(),
            outcome: document.outcome.try_into()?,
            at: document.at,
        })
    }
}

impl TryFrom<RulingDocument> for Ruling {
    type Error = Vec<DocumentFault>;

    fn try_from(document: RulingDocument) -> Result<Self, Vec<DocumentFault>> {
        Ok(Self {
            id: RulingId(document.id),
            referee: AccountId(document.referee),
            outcome: document.outcome.try_into()?,
            reason: read_reason(&document.reason)?,
            at: document.at,
        })
    }
}

fn read_reason(text: &str) -> Result<Text, Vec<DocumentFault>> {
    Text::new(text).map_err(|fault| {
        vec![DocumentFault::new(
            "/reason",
            "result.reason",
            fault.message(),
        )]
    })
}
