//! A client of the public read service.

use serde::Deserialize;
use serde_json::Value;

use super::resource::Resource;
use crate::harness::{Actor, Answer};

/// A season at the shared read service, as one person asks it.
#[derive(Clone)]
pub struct PublicSeason(Resource);

#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct PublicTable {
    pub season: String,
    pub version: i64,
    pub tie_breaks: Vec<String>,
    pub rows: Vec<PublicRow>,
}

#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct PublicRow {
    pub player: String,
    pub handle: String,
    pub rank: u64,
    pub total: i64,
    pub tie_breaks: Vec<Option<String>>,
    /// All that stories look at only as a whole.
    #[serde(flatten)]
    pub more: Value,
}

impl PublicTable {
    #[track_caller]
    pub fn total_of(&self, handle: &str) -> i64 {
        let mut rows = self.rows.iter();
        rows.find(|row| row.handle == handle).unwrap().total
    }
}

#[derive(Debug, Deserialize)]
pub struct PublicWeeks {
    pub version: i64,
    pub weeks: Vec<PublicWeek>,
}

#[derive(Clone, Debug, Deserialize)]
pub struct PublicWeek {
    pub phase: String,
    pub announce_at: String,
    /// As far as it is revealed.
    pub scenario: Option<Revealed>,
}

#[derive(Clone, Debug, Deserialize)]
pub struct Revealed {
    pub kind: String,
}

/// A table that was frozen when something changed it.
#[derive(Debug, Deserialize)]
pub struct FrozenTable {
    pub week: u8,
    pub version: i64,
    pub act: String,
}

#[derive(Debug, Deserialize)]
pub struct FrozenTables {
    pub tables: Vec<FrozenTable>,
}

#[derive(Debug, Deserialize)]
pub struct PublicLedger {
    pub total: i64,
    pub lines: Vec<Value>,
}

/// A player's record over the seasons of a club.
#[derive(Debug, Deserialize)]
pub struct Record {
    pub places: Vec<Place>,
}

/// Where a player stands in one season.
#[derive(Debug, Deserialize)]
pub struct Place {
    pub name: String,
    pub handle: String,
    pub total: i64,
}

/// A page of the directory of public seasons.
#[derive(Debug, Deserialize)]
pub struct Directory {
    pub seasons: Vec<Listed>,
    pub next: Option<String>,
}

#[derive(Debug, Deserialize)]
pub struct Listed {
    pub name: String,
    /// Where it is read.
    pub address: String,
}

impl Directory {
    pub fn names(&self) -> Vec<&str> {
        let seasons = self.seasons.iter();
        seasons.map(|season| season.name.as_str()).collect()
    }
}

impl Actor {
    /// A record at the address that its player was told.
    pub fn record_at(&self, address: &str) -> Answer<Record> {
        self.get(address).of()
    }

    /// The directory of public seasons; `query` may be empty.
    pub fn directory(&self, query: &str) -> Answer<Directory> {
        self.get(&format!("/public/seasons{query}")).of()
    }

    /// A season where the directory says that it is read.
    pub fn public_season_at(&self, address: &str) -> PublicSeason {
        PublicSeason::new(self, address.to_owned())
    }
}

impl PublicSeason {
    pub(super) fn new(actor: &Actor, path: String) -> Self {
        Self(Resource::new(actor, path))
    }

    pub fn by(&self, actor: impl AsRef<Actor>) -> Self {
        Self(self.0.by(actor))
    }

    pub fn path(&self, of: &str) -> String {
        self.0.at(of)
    }

    /// One of its resources, in whatever form its ending asks for.
    pub fn read(&self, of: &str) -> Answer {
        self.0.get(of)
    }

    pub fn standings(&self) -> Answer<PublicTable> {
        self.0.get("standings")
    }

    /// The table after a week as it was at a version.
    pub fn standings_at(&self, week: u8, version: i64) -> Answer<PublicTable> {
        self.0
            .get(format_args!("standings?week={week}&version={version}"))
    }

    /// The newest table as it was at a version.
    pub fn standings_of_version(&self, version: i64) -> Answer<PublicTable> {
        self.0.get(format_args!("standings?version={version}"))
    }

    pub fn standings_after(&self, week: u8) -> Answer<PublicTable> {
        self.0.get(format_args!("standings?week={week}"))
    }

    /// The table at this version or a newer one.
    pub fn standings_from(&self, version: i64) -> Answer<PublicTable> {
        self.0.get(format_args!("standings?at_least={version}"))
    }

    pub fn weeks(&self) -> Answer<PublicWeeks> {
        self.0.get("weeks")
    }

    pub fn tables(&self) -> Answer<FrozenTables> {
        self.0.get("tables")
    }

    pub fn ledger(&self, player: &str, query: &str) -> Answer<PublicLedger> {
        self.0.get(format_args!("players/{player}/ledger{query}"))
    }
}
