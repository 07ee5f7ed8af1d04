//! A client of a player's list of a week, and lists as JSON.

use std::collections::BTreeMap;

use reqwest::Method;
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use tallyhost::demo::data;

use super::list_aids::{Cut, Fits, ListChanges, Reading};
use super::resource::client;
use crate::harness::{Answer, Player};

client! {
    /// One player's list of a week.
    ListClient;
}

/// An army list.
#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[serde(deny_unknown_fields)]
pub struct List {
    pub faction: String,
    pub entries: Vec<Entry>,
}

#[derive(Clone, Debug, Deserialize, PartialEq, Serialize)]
#[serde(deny_unknown_fields)]
pub struct Entry {
    pub key: String,
    pub unit: String,
    pub models: u32,
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub options: BTreeMap<String, u32>,
}

impl List {
    /// The list that the demo has for a player's week.
    pub fn demo(handle: &str, week: u8) -> Self {
        let list = &data::lists().unwrap()[handle][usize::from(week) - 1];
        Self::deserialize(list).unwrap()
    }

    pub fn of(faction: &str, entries: impl IntoIterator<Item = Entry>) -> Self {
        Self {
            faction: faction.to_owned(),
            entries: entries.into_iter().collect(),
        }
    }

    pub fn without_last_entry(mut self) -> Self {
        self.entries.pop();
        self
    }
}

impl Entry {
    pub fn new(key: impl Into<String>, unit: &str, models: u32) -> Self {
        Self {
            key: key.into(),
            unit: unit.to_owned(),
            models,
            options: BTreeMap::new(),
        }
    }

    /// With each of these options once.
    pub fn with(mut self, options: &[&str]) -> Self {
        let options = options.iter().map(|option| ((*option).to_owned(), 1));
        self.options.extend(options);
        self
    }
}

/// The proof of a sealed list.
#[derive(Clone, Debug, Deserialize)]
pub struct Receipt {
    pub digest: String,
    /// What the digest is made from.
    pub contents: Value,
    pub sealed_at: String,
    pub report: Report,
    pub late_minutes: Option<u64>,
}

impl Receipt {
    pub fn list(&self) -> List {
        List::deserialize(&self.contents["list"]).unwrap()
    }

    pub fn salt(&self) -> &Value {
        &self.contents["salt"]
    }

    pub fn list_id(&self) -> &Value {
        &self.contents["list_id"]
    }
}

#[derive(Clone, Debug, Deserialize)]
pub struct Report {
    pub accepted: bool,
    pub total: u64,
    pub left: i64,
    pub findings: Vec<Finding>,
}

impl Report {
    /// Code, limit and actual value of each finding.
    pub fn measured(&self) -> Vec<(&str, Option<u64>, Option<u64>)> {
        let findings = self.findings.iter();
        findings
            .map(|found| (found.code.as_str(), found.limit, found.actual))
            .collect()
    }

    pub fn codes(&self) -> Vec<&str> {
        let findings = self.findings.iter();
        findings.map(|found| found.code.as_str()).collect()
    }
}

#[derive(Clone, Debug, Deserialize)]
pub struct Finding {
    pub code: String,
    pub severity: String,
    pub entries: Vec<String>,
    pub limit: Option<u64>,
    pub actual: Option<u64>,
}

/// A report with the single steps that bring a list under the cap.
#[derive(Debug, Deserialize)]
pub struct Checked {
    #[serde(flatten)]
    pub report: Report,
    pub cuts: Vec<Cut>,
}

#[derive(Debug, Deserialize)]
pub struct Draft {
    pub draft_revision: u64,
}

/// A player's own list.
#[derive(Debug, Deserialize)]
pub struct OwnList {
    pub id: String,
    pub draft: Option<List>,
    pub sealed: Option<SealedList>,
}

#[derive(Clone, Debug, Deserialize)]
pub struct SealedList {
    pub list: List,
    pub receipt: String,
    pub points: u64,
    pub catalogue_number: u64,
    pub stands_in: bool,
}

/// The lists of a week, as far as one may know of them.
#[derive(Debug, Deserialize)]
pub struct WeekLists {
    pub opened: bool,
    pub lists: Vec<PlayerList>,
}

#[derive(Clone, Debug, Deserialize)]
pub struct PlayerList {
    pub player: String,
    pub state: String,
    pub sealed: Option<SealedList>,
}

impl WeekLists {
    #[track_caller]
    pub fn of(&self, player: &Player) -> &PlayerList {
        let mut lists = self.lists.iter();
        lists.find(|list| list.player == player.id).unwrap()
    }
}

impl PlayerList {
    #[track_caller]
    pub fn sealed(&self) -> &SealedList {
        self.sealed.as_ref().unwrap()
    }
}

/// A unit of a player's collection.
#[derive(Debug, Deserialize)]
pub struct CollectedUnit {
    pub entry: String,
    pub models: u64,
    pub painted: u64,
    pub first_week: Option<u64>,
    pub last_week: Option<u64>,
}

impl ListClient {
    pub fn own(&self) -> Answer<OwnList> {
        self.get("")
    }

    /// Saves the first draft.
    pub fn draft(&self, list: &List) -> Answer<Draft> {
        self.put("draft", list)
    }

    /// Saves a draft in the place of the one with this revision.
    pub fn draft_over(&self, revision: &str, list: &List) -> Answer<Draft> {
        self.ask(Method::PUT, "draft", |request| {
            request.json(list).header("if-match", revision)
        })
    }

    pub fn seal(&self, list: &List) -> Answer<Receipt> {
        self.post("seal", list)
    }

    /// Tells everything and saves nothing.
    pub fn check(&self, list: &List) -> Answer<Checked> {
        self.post("check", list)
    }

    /// Reads a pasted text.
    pub fn read(&self, text: &str) -> Answer<Reading> {
        self.post("read", &json!({ "text": text }))
    }

    /// What would still fit.
    pub fn fits(&self, list: &List) -> Answer<Fits> {
        self.post("fits", list)
    }

    /// What is new since the last opened list.
    pub fn changes(&self, list: &List) -> Answer<ListChanges> {
        self.post("changes", list)
    }
}
