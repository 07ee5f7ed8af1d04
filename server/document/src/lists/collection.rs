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
    /// Most models ever fielded, earlier seasons included.
    pub models: u32,
    /// Models that the painting log shows as painted, at most all of them.
    pub painted: u32,
    /// The first week it was fielded in; absent for a unit of an earlier season that was not yet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first_week: Option<u8>,
    /// The last week it was fielded in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last_week: Option<u8>,
}

impl From<&CollectionUnit> for CollectionUnitDocument {
    fn from(unit: &CollectionUnit) -> Self {
        Self {
            entry: unit.entry.to_string(),
            faction: unit.faction.to_string(),
            unit: unit.unit.to_string(),
            models: unit.models,
            painted: unit.finished,
            first_week: unit.fielded.map(|(first, _)| first.number()),
            last_week: unit.fielded.map(|(_, last)| last.number()),
        }
    }
}
