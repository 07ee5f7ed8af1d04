//! What would still fit into a list, as JSON.

use league::lists::{Addition, Fits, Upgrade, UpgradeStep};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Everything that would still fit and keep the list as legal as it is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct FitsDocument {
    /// Units that could be added, in the catalogue's order.
    pub additions: Vec<AdditionDocument>,
    /// Single steps for units already there, in the list's order.
    pub upgrades: Vec<UpgradeDocument>,
}

/// A unit that could be added.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct AdditionDocument {
    /// Key of the unit.
    #[schema(example = "pole-hands")]
    pub unit: String,
    /// The sizes that fit, without options.
    pub sizes: Vec<FittingSizeDocument>,
}

/// A size that fits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct FittingSizeDocument {
    /// Models.
    pub models: u32,
    /// Points of the unit at this size.
    pub points: u32,
}

/// A single step for one entry.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct UpgradeDocument {
    /// Key of the entry.
    #[schema(example = "pole-hands-1")]
    pub entry: String,
    /// The step.
    pub step: StepDocument,
    /// Points it costs more.
    pub points: u32,
}

/// A way to add to an entry.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum StepDocument {
    /// Grow to so many models.
    GrowTo {
        /// Models afterwards.
        models: u32,
    },
    /// Take an option once more.
    Take {
        /// Key of the option.
        option: String,
    },
}

impl From<&Fits> for FitsDocument {
    fn from(fits: &Fits) -> Self {
        Self {
            additions: fits.additions.iter().map(Into::into).collect(),
            upgrades: fits.upgrades.iter().map(Into::into).collect(),
        }
    }
}

impl From<&Addition> for AdditionDocument {
    fn from(addition: &Addition) -> Self {
        let sizes = addition.sizes.iter().map(|size| FittingSizeDocument {
            models: size.models,
            points: size.points.get(),
        });
        Self {
            unit: addition.unit.to_string(),
            sizes: sizes.collect(),
        }
    }
}

impl From<&Upgrade> for UpgradeDocument {
    fn from(upgrade: &Upgrade) -> Self {
        Self {
            entry: upgrade.entry.to_string(),
            step: match &upgrade.step {
                UpgradeStep::GrowTo(models) => StepDocument::GrowTo { models: *models },
                UpgradeStep::Take(option) => StepDocument::Take {
                    option: option.to_string(),
                },
            },
            points: upgrade.points.get(),
        }
    }
}
