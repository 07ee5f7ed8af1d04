//! What the API answers to whoever writes a list: readings, fits, changes.

use serde::Deserialize;
use serde_json::Value;

use super::catalogue::TouchedEntry;
use super::list::{Finding, List};

/// A pasted text, line by line.
#[derive(Debug, Deserialize)]
pub struct Reading {
    pub lines: Vec<ReadLine>,
    pub list: Option<List>,
    pub findings: Vec<Finding>,
}

#[derive(Debug, Deserialize)]
pub struct ReadLine {
    pub certainty: String,
    pub parts: Vec<Part>,
}

#[derive(Debug, Deserialize)]
pub struct Part {
    pub meaning: Meaning,
}

#[derive(Debug, Deserialize)]
pub struct Meaning {
    /// Of a unit: the entries that it is.
    #[serde(default)]
    pub entries: Vec<String>,
}

/// What would still fit into a list.
#[derive(Debug, Deserialize)]
pub struct Fits {
    pub additions: Value,
    pub upgrades: Vec<Upgrade>,
}

#[derive(Debug, Deserialize, PartialEq)]
pub struct Upgrade {
    pub entry: String,
    pub step: Value,
    pub points: u64,
}

/// One step that makes a list cheaper.
#[derive(Debug, Deserialize, PartialEq)]
pub struct Cut {
    pub entry: String,
    pub step: Value,
    pub saves: u64,
}

/// What is new in a list since the last one.
#[derive(Debug, Deserialize)]
pub struct ListChanges {
    /// The week of the last one.
    pub since: Option<u8>,
    pub changes: Vec<ListChange>,
    pub catalogue: Option<VersionChange>,
}

#[derive(Debug, Deserialize)]
pub struct ListChange {
    pub entry: String,
    pub became: String,
}

impl ListChanges {
    /// Entry and what it became, of each change.
    pub fn told(&self) -> Vec<(&str, &str)> {
        let changes = self.changes.iter();
        changes
            .map(|change| (change.entry.as_str(), change.became.as_str()))
            .collect()
    }
}

/// The catalogue has changed between two lists.
#[derive(Debug, Deserialize)]
pub struct VersionChange {
    pub before: u64,
    pub now: u64,
    pub touched: Vec<TouchedEntry>,
}
