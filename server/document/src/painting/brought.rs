//! A unit that a player brought into a season from the one before it, as JSON.

use league::catalogue::key::{FactionKey, UnitKey};
use league::ids::PlayerId;
use league::lists::EntryKey;
use league::painting::BroughtUnit;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::painting::rules::ModelStagesDocument;

/// A unit of an earlier season, with its paint.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct BroughtUnitDocument {
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
    /// How far the painting log showed its models, where it showed them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stages: Option<ModelStagesDocument>,
}

impl From<&BroughtUnit> for BroughtUnitDocument {
    fn from(unit: &BroughtUnit) -> Self {
        Self {
            entry: unit.entry.to_string(),
            faction: unit.faction.to_string(),
            unit: unit.unit.to_string(),
            models: unit.models,
            stages: unit.stages.map(ModelStagesDocument::from),
        }
    }
}

impl BroughtUnitDocument {
    /// The unit as `player` has it; `None` where a key or the stages cannot be.
    pub fn into_brought_unit(self, player: PlayerId) -> Option<BroughtUnit> {
        let stages = self.stages.map(TryInto::try_into).transpose().ok()?;
        Some(BroughtUnit {
            player,
            entry: EntryKey::new(&self.entry).ok()?,
            faction: FactionKey::new(&self.faction).ok()?,
            unit: UnitKey::new(&self.unit).ok()?,
            models: self.models,
            stages,
        })
    }
}
