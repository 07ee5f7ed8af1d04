//! The request body of a catalogue version.

use serde::{Deserialize, Serialize};
use tallyhost::demo::data;

/// What a version of a catalogue is imported from.
#[derive(Clone, Debug, Deserialize, Serialize)]
pub struct Catalogue {
    pub factions: Vec<Faction>,
}

#[derive(Clone, Debug, Deserialize, Serialize)]
pub struct Faction {
    pub key: String,
    pub name: String,
    pub units: Vec<Unit>,
}

#[derive(Clone, Debug, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct Unit {
    pub key: String,
    pub name: String,
    pub kind: String,
    #[serde(default)]
    pub keywords: Vec<String>,
    pub sizes: Vec<Size>,
    #[serde(default)]
    pub options: Vec<UnitOption>,
    pub minutes_per_model: u32,
}

#[derive(Clone, Debug, Deserialize, Serialize)]
pub struct Size {
    pub models: u32,
    pub points: u64,
}

#[derive(Clone, Debug, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct UnitOption {
    pub key: String,
    pub name: String,
    pub points: u64,
}

impl Catalogue {
    pub fn of_the_demo() -> Self {
        Self::deserialize(data::catalogue().unwrap()).unwrap()
    }

    /// A unit of some faction.
    #[track_caller]
    pub fn unit(&mut self, key: &str) -> &mut Unit {
        let units = self.factions.iter_mut().flat_map(|it| &mut it.units);
        units.into_iter().find(|unit| unit.key == key).unwrap()
    }

    /// Takes a unit away from every faction that has it.
    pub fn remove_unit(&mut self, key: &str) {
        for faction in &mut self.factions {
            faction.units.retain(|unit| unit.key != key);
        }
    }
}
