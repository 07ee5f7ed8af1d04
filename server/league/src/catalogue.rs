//! The catalogue: factions and their units with prices, one version of it.
//!
//! Absent by design: version numbers and effective weeks. A version is a value; which week uses
//! which version is a fact of the season.

mod build;
pub mod diff;
pub mod draft;
pub mod fault;
pub mod key;
pub mod unit;

pub use build::{
    MAX_FACTIONS, MAX_KEYWORDS, MAX_MINUTES, MAX_MODELS, MAX_OPTIONS, MAX_SIZES, MAX_TAKINGS,
    MAX_UNITS,
};

use crate::catalogue::draft::CatalogueDraft;
use crate::catalogue::fault::CatalogueFault;
use crate::catalogue::key::{FactionKey, UnitKey};
use crate::catalogue::unit::Unit;
use crate::name::Name;

/// A sound catalogue. Only [`Catalogue::build`] makes one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Catalogue {
    factions: Vec<Faction>,
}

impl Catalogue {
    /// Tests a draft and makes a catalogue of it.
    ///
    /// # Errors
    /// Every [`CatalogueFault`] of the draft in the draft's order, not the first alone.
    pub fn build(draft: &CatalogueDraft) -> Result<Self, Vec<CatalogueFault>> {
        build::build(draft)
    }

    /// The factions in the catalogue's order.
    pub fn factions(&self) -> &[Faction] {
        &self.factions
    }

    /// The faction of this key.
    pub fn faction(&self, key: &FactionKey) -> Option<&Faction> {
        self.factions.iter().find(|faction| &faction.key == key)
    }
}

/// The units of one faction.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Faction {
    key: FactionKey,
    name: Name,
    units: Vec<Unit>,
    by_key: Vec<usize>,
}

impl Faction {
    fn new(key: FactionKey, name: Name, units: Vec<Unit>) -> Self {
        let mut by_key: Vec<usize> = (0..units.len()).collect();
        by_key.sort_by_key(|&i| units.get(i).map(|unit| &unit.key));
        Self {
            key,
            name,
            units,
            by_key,
        }
    }

    /// Unique within the catalogue.
    pub fn key(&self) -> &FactionKey {
        &self.key
    }

    /// As people call it.
    pub fn name(&self) -> &Name {
        &self.name
    }

    /// The units in the catalogue's order.
    pub fn units(&self) -> &[Unit] {
        &self.units
    }

    /// The unit of this key, by binary search.
    pub fn unit(&self, key: &UnitKey) -> Option<&Unit> {
        let found = self
            .by_key
            .binary_search_by(|&i| self.units.get(i).map(|unit| &unit.key).cmp(&Some(key)))
            .ok()?;
        self.units.get(*self.by_key.get(found)?)
    }
}
