//! An army list as JSON.

use std::collections::BTreeMap;

use league::catalogue::key::{FactionKey, OptionKey, UnitKey};
use league::lists::army_list::ListFault;
use league::lists::{ArmyList, Entry, EntryKey};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::fault::{DocumentFault, ok_or_note};

/// A list as it is drafted, sealed, stored and shown once opened.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ArmyListDocument {
    /// Key of the faction.
    #[schema(example = "sluicebond-syndics")]
    pub faction: String,
    /// At most 200 entries.
    pub entries: Vec<EntryDocument>,
}

/// One unit in a list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct EntryDocument {
    /// Which unit of the player's collection this is; keep it from week to week. 1 to 40 letters,
    /// digits, hyphens and underscores, unique in the list.
    #[schema(example = "pole-hands-1")]
    pub key: String,
    /// Key of the unit in the catalogue.
    #[schema(example = "pole-hands")]
    pub unit: String,
    /// Models fielded.
    #[schema(example = 8)]
    pub models: u32,
    /// How often each option is taken, by option key.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    #[schema(example = json!({"pennant": 1}))]
    pub options: BTreeMap<String, u32>,
    /// Key of the entry that this leader joins.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub joins: Option<String>,
}

impl TryFrom<ArmyListDocument> for ArmyList {
    type Error = Vec<DocumentFault>;

    fn try_from(document: ArmyListDocument) -> Result<Self, Vec<DocumentFault>> {
        let mut faults = Vec::new();
        let faction = FactionKey::new(&document.faction).map_err(|fault| fault.message());
        let faction = ok_or_note(&mut faults, "/faction", "list.key", faction);
        let entries: Vec<Entry> = document
            .entries
            .iter()
            .enumerate()
            .filter_map(|(i, entry)| read_entry(entry, &format!("/entries/{i}"), &mut faults))
            .collect();
        match faction {
            Some(faction) if faults.is_empty() => {
                Self::new(faction, entries).map_err(|faults| faults.iter().map(locate).collect())
            }
            _ => Err(faults),
        }
    }
}

fn read_entry(
    document: &EntryDocument,
    at: &str,
    faults: &mut Vec<DocumentFault>,
) -> Option<Entry> {
    let key = EntryKey::new(&document.key).map_err(|fault| fault.message());
    let key = ok_or_note(faults, format!("{at}/key"), "list.entry-key", key);
    let unit = UnitKey::new(&document.unit).map_err(|fault| fault.message());
    let unit = ok_or_note(faults, format!("{at}/unit"), "list.key", unit);
    let mut options = BTreeMap::new();
    for (name, &taken) in &document.options {
        let pointer = format!("{at}/options/{}", escape(name));
        let option = OptionKey::new(name).map_err(|fault| fault.message());
        if let Some(option) = ok_or_note(faults, pointer, "list.key", option) {
            options.insert(option, taken);
        }
    }
    let joins = document.joins.as_ref().and_then(|joined| {
        let joined = EntryKey::new(joined).map_err(|fault| fault.message());
        ok_or_note(faults, format!("{at}/joins"), "list.entry-key", joined)
    });
    Some(Entry {
        key: key?,
        unit: unit?,
        models: document.models,
        options,
        joins,
    })
}

/// A member name inside a JSON Pointer (RFC 6901, section 3).
fn escape(name: &str) -> String {
    name.replace('~', "~0").replace('/', "~1")
}

fn locate(fault: &ListFault) -> DocumentFault {
    let (pointer, code) = match fault {
        ListFault::TooMany(_) => ("/entries".into(), "list.too-many-entries"),
        ListFault::Twice(i, _) => (format!("/entries/{i}/key"), "list.entry-twice"),
        ListFault::JoinsNothing(i, _) => (format!("/entries/{i}/joins"), "list.joins-nothing"),
    };
    DocumentFault::new(pointer, code, fault.message())
}

impl From<&ArmyList> for ArmyListDocument {
    fn from(list: &ArmyList) -> Self {
        Self {
            faction: list.faction().to_string(),
            entries: list.entries().iter().map(Into::into).collect(),
        }
    }
}

impl From<&Entry> for EntryDocument {
    fn from(entry: &Entry) -> Self {
        Self {
            key: entry.key.to_string(),
            unit: entry.unit.to_string(),
            models: entry.models,
            options: entry
                .options
                .iter()
                .map(|(key, &taken)| (key.to_string(), taken))
                .collect(),
            joins: entry.joins.as_ref().map(ToString::to_string),
        }
    }
}
