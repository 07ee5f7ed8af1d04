//! A player's growing collection, as JSON.

use league::lists::CollectionUnit;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// One unit of a collection.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct CollectionUnitDocument {
    /// Key of the entry: the same in every week's list.
    #[schema(example = "pole-hands-1")]
    pub entry: String,
    /// Key of the faction.
    pub faction: String,
    /// Key of the unit in the catalogue.
    #[schema(example = "pole-hands")]
    pub unit: String,
    /// Most models ever fielded.
    pub models: u32,
    /// Models that the painting log shows as painted, at most all of them.
    pub painted: u32,
    /// The first week it was fielded in.
    pub first_week: u8,
    /// The last week it was fielded in.
    pub last_week: u8,
}

impl From<&CollectionUnit> for CollectionUnitDocument {
    fn from(unit: &CollectionUnit) -> Self {
        Self {
            entry: unit.entry.to_string(),
            faction: unit.faction.to_string(),
            unit: unit.unit.to_string(),
            models: unit.models,
            painted: unit.finished,
            first_week: unit.first_week.number(),
            last_week: unit.last_week.number(),
        }
    }
}
