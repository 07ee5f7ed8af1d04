//! The claims of the painting log as JSON.

use chrono::{DateTime, Utc};
use league::painting::{ClaimState, Evidence, PaintingClaim};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use crate::painting::rules::{CheckerDocument, ModelStagesDocument};

/// Where a claim stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum ClaimStateDocument {
    /// Nobody has looked.
    Open,
    /// Somebody looked and agrees.
    Verified,
    /// Somebody looked and does not.
    Refused,
}

/// A claim of painted models, and what became of it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ClaimDocument {
    /// Identity.
    pub id: Uuid,
    /// Whose.
    pub player: Uuid,
    /// For which week.
    pub week: u8,
    /// The unit.
    pub unit: String,
    /// Models at each stage.
    pub stages: ModelStagesDocument,
    /// Name of the photo that shows them; the club alone can see it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub photo: Option<String>,
    /// When it was made.
    pub claimed_at: DateTime<Utc>,
    /// Where it stands.
    pub state: ClaimStateDocument,
    /// In which part somebody verified it.
    pub checker: Option<CheckerDocument>,
    /// When it was decided.
    pub decided_at: Option<DateTime<Utc>>,
    /// Why it was refused.
    pub reason: Option<String>,
}

impl From<&PaintingClaim> for ClaimDocument {
    fn from(claim: &PaintingClaim) -> Self {
        let (state, checker, decided_at, reason) = match &claim.state {
            ClaimState::Open => (ClaimStateDocument::Open, None, None, None),
            ClaimState::Verified { checker, at, .. } => (
                ClaimStateDocument::Verified,
                Some((*checker).into()),
                Some(*at),
                None,
            ),
            ClaimState::Refused { reason, at, .. } => (
                ClaimStateDocument::Refused,
                None,
                Some(*at),
                Some(reason.as_str().to_owned()),
            ),
        };
        Self {
            id: claim.made.id.0,
            player: claim.made.player.0,
            week: claim.made.week.number(),
            unit: claim.made.unit.to_string(),
            stages: claim.made.stages.into(),
            photo: match claim.made.evidence {
                Evidence::AtTable => None,
                Evidence::Photo(photo) => Some(hex::encode(photo.0)),
            },
            claimed_at: claim.made.at,
            state,
            checker,
            decided_at,
            reason,
        }
    }
}
