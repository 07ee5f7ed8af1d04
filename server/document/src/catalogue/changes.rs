//! The diff of two versions of a catalogue as JSON.

use league::catalogue::diff::{Difference, TouchedEntry, UnitDifference};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::mirror_enum::mirror_enum;

mirror_enum! {
    /// How a unit differs.
    DifferenceDocument is Difference {
        /// Some price is higher and none lower.
        Dearer,
        /// Some price is lower and none higher.
        Cheaper,
        /// Some prices are higher, others lower.
        Repriced,
        /// The same prices; sizes, options, keywords or limits differ.
        Altered,
        /// In the new version only.
        Added,
        /// In the old version only.
        Gone,
    }
}

/// One unit that differs.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct UnitDifferenceDocument {
    /// Key of its faction.
    pub faction: String,
    /// Its key.
    #[schema(example = "pole-hands")]
    pub unit: String,
    /// Its name in the newest version that has it.
    #[schema(example = "Pole-Hands")]
    pub name: String,
    /// How it differs.
    pub difference: DifferenceDocument,
}

/// An entry of a list that the new version touches.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct TouchedEntryDocument {
    /// Key of the entry.
    #[schema(example = "pole-hands-1")]
    pub entry: String,
    /// As people call its unit.
    #[schema(example = "Pole-Hands")]
    pub name: String,
    /// Its points in the old version.
    pub before: u32,
    /// Its points in the new version; absent when the unit, its size or an option is gone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub now: Option<u32>,
}

impl From<&UnitDifference> for UnitDifferenceDocument {
    fn from(unit: &UnitDifference) -> Self {
        Self {
            faction: unit.faction.to_string(),
            unit: unit.unit.to_string(),
            name: unit.name.clone(),
            difference: unit.difference.into(),
        }
    }
}

impl From<&TouchedEntry> for TouchedEntryDocument {
    fn from(touched: &TouchedEntry) -> Self {
        Self {
            entry: touched.entry.to_string(),
            name: touched.name.clone(),
            before: touched.before.get(),
            now: touched.now.map(league::points::Points::get),
        }
    }
}
