//! How a list that is over its cap could come under it, as JSON.

use league::lists::{Cut, CutStep};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// One step that suffices and breaks no further rule.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct CutDocument {
    /// Key of the entry.
    #[schema(example = "pole-hands-1")]
    pub entry: String,
    /// The step.
    pub step: CutStepDocument,
    /// Points it saves.
    #[schema(example = 16)]
    pub saves: u32,
}

/// A way to take from an entry.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum CutStepDocument {
    /// Shrink to so many models.
    ShrinkTo {
        /// Models afterwards.
        models: u32,
    },
    /// Take an option no more.
    Drop {
        /// Key of the option.
        option: String,
    },
    /// Leave the whole entry out.
    LeaveOut {},
}

impl From<&Cut> for CutDocument {
    fn from(cut: &Cut) -> Self {
        Self {
            entry: cut.entry.to_string(),
            step: match &cut.step {
                CutStep::ShrinkTo(models) => CutStepDocument::ShrinkTo { models: *models },
                CutStep::Drop(option) => CutStepDocument::Drop {
                    option: option.to_string(),
                },
                CutStep::LeaveOut => CutStepDocument::LeaveOut {},
            },
            saves: cut.saves.get(),
        }
    }
}
