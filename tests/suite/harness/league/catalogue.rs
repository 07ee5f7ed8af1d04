//! A client of a catalogue and its versions.

use reqwest::Method;
use serde::Deserialize;

use super::catalogue_body::Catalogue;
use super::resource::{Resource, client};
use crate::harness::{Actor, Answer};

client! {
    /// A catalogue: its versions and what each changed.
    CatalogueClient;
}

/// What a version changed, and whose lists that touches as far as one may know.
#[derive(Debug, Deserialize)]
pub struct CatalogueChanges {
    pub summary: String,
    pub units: Vec<UnitDifference>,
    pub own: Vec<TouchedList>,
    pub opened: Vec<OpenedLists>,
}

#[derive(Debug, Deserialize)]
pub struct UnitDifference {
    pub unit: String,
    pub difference: String,
}

#[derive(Debug, Deserialize)]
pub struct TouchedList {
    pub week: u8,
    pub sealed: bool,
    pub entries: Vec<TouchedEntry>,
}

/// An entry of a list whose points are not what they were, or that is no longer offered.
#[derive(Debug, Deserialize, PartialEq)]
pub struct TouchedEntry {
    pub entry: String,
    pub name: String,
    pub before: u64,
    pub now: Option<u64>,
}

impl TouchedEntry {
    pub fn of(entry: &str, name: &str, before: u64, now: Option<u64>) -> Self {
        Self {
            entry: entry.to_owned(),
            name: name.to_owned(),
            before,
            now,
        }
    }
}

/// How many opened lists of a week there are, and how many of them are touched.
#[derive(Debug, Deserialize)]
pub struct OpenedLists {
    pub lists: u64,
    pub touched: u64,
}

impl CatalogueClient {
    pub(super) fn at_path(actor: &Actor, path: String) -> Self {
        Self(Resource::new(actor, path))
    }

    /// Makes the next version.
    pub fn import(&self, catalogue: &Catalogue) -> Answer {
        self.post("versions", catalogue)
    }

    /// The same from a text of some media type.
    pub fn import_text(&self, media_type: &str, text: &str) -> Answer {
        self.ask(Method::POST, "versions", |request| {
            let request = request.header("content-type", media_type);
            request.body(text.to_owned())
        })
    }

    pub fn changes(&self, number: u64, since: u64) -> Answer<CatalogueChanges> {
        self.changes_as(number, &format!("?since={since}"))
    }

    /// The same with a query of one's own.
    pub fn changes_as(&self, number: u64, query: &str) -> Answer<CatalogueChanges> {
        self.get(format_args!("versions/{number}/changes{query}"))
    }
}
