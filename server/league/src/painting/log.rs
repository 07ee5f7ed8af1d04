//! The painting log of a season: what players brought into it, and what they claimed since.

use crate::catalogue::key::{FactionKey, UnitKey};
use crate::ids::PlayerId;
use crate::lists::{CollectionUnit, EntryKey};
use crate::week::WeekNo;

use super::claim::{PaintingClaim, UnitRecord};
use super::stage::ModelStages;
use super::{FirstPainted, Painting};

/// A unit that a player brought into the season from the one before it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BroughtUnit {
    pub player: PlayerId,
    /// The unit of the player's collection, the same in every week's list.
    pub entry: EntryKey,
    pub faction: FactionKey,
    /// What it is in the catalogue.
    pub unit: UnitKey,
    /// Most models ever fielded.
    pub models: u32,
    /// How far the log of the earlier season showed its models, where it showed them.
    pub stages: Option<ModelStages>,
}

/// The log of all players, or of one.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PaintingLog {
    /// Brought into the season; painted before its first week.
    pub brought: Vec<BroughtUnit>,
    /// In the order in which they were made.
    pub claims: Vec<PaintingClaim>,
}

impl PaintingLog {
    /// What `player` had in it after `week`. Claims of later weeks do not count yet.
    #[must_use]
    pub fn for_player(&self, player: PlayerId, week: WeekNo) -> Self {
        let own = |unit: &&BroughtUnit| unit.player == player;
        let known = |claim: &&PaintingClaim| claim.made.player == player && claim.made.week <= week;
        Self {
            brought: self.brought.iter().filter(own).cloned().collect(),
            claims: self.claims.iter().filter(known).cloned().collect(),
        }
    }

    /// What the log of one player shows for a unit: as it was brought, then by every verified claim.
    pub fn record_of(&self, painting: &Painting, unit: &EntryKey) -> Option<UnitRecord> {
        let brought = self.brought.iter().find(|known| known.entry == *unit);
        let stages = brought.and_then(|known| known.stages);
        let start = stages.map(|stages| UnitRecord {
            unit: unit.clone(),
            stages,
            painted_in: painting
                .is_painted(stages)
                .then_some(FirstPainted::BeforeTheSeason),
        });
        let of_unit = self.claims.iter().filter(|claim| claim.made.unit == *unit);
        of_unit.fold(start, |record, claim| claim.applied_to(painting, record))
    }

    /// The units of one player's collection as they are brought into the next season by `player`,
    /// as that season knows the same person.
    pub fn carry_over(
        &self,
        painting: &Painting,
        collection: &[CollectionUnit],
        player: PlayerId,
    ) -> Vec<BroughtUnit> {
        let carried = collection.iter().map(|unit| {
            let record = self.record_of(painting, &unit.entry);
            BroughtUnit {
                player,
                entry: unit.entry.clone(),
                faction: unit.faction.clone(),
                unit: unit.unit.clone(),
                models: unit.models,
                stages: record.map(|record| record.stages),
            }
        });
        carried.collect()
    }
}
