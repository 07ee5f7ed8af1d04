//! The army list as a player hands it in.

use std::collections::BTreeMap;
use std::fmt;

use messages::{Message, Value, list_faults, text_faults};

use crate::catalogue::key::{FactionKey, OptionKey, UnitKey};

/// Most entries in one list.
pub const MAX_ENTRIES: usize = 200;
/// Longest entry key in characters.
pub const MAX_ENTRY_KEY_LENGTH: usize = 40;

/// Identity of one unit of a player's collection. It stays the same from week to week, so that
/// carry-over is judged on which unit it is, not on what it is called.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryKey(Box<str>);

impl EntryKey {
    /// # Errors
    /// [`EntryKeyFault`] unless the text is 1 to [`MAX_ENTRY_KEY_LENGTH`] ASCII letters, digits,
    /// hyphens and underscores.
    pub fn new(text: &str) -> Result<Self, EntryKeyFault> {
        let shaped = (1..=MAX_ENTRY_KEY_LENGTH).contains(&text.len())
            && text
                .bytes()
                .all(|b| b.is_ascii_alphanumeric() || matches!(b, b'-' | b'_'));
        if shaped {
            Ok(Self(text.into()))
        } else {
            Err(EntryKeyFault)
        }
    }

    /// The key as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl From<EntryKey> for Value {
    fn from(key: EntryKey) -> Self {
        key.as_str().into()
    }
}

impl fmt::Display for EntryKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// The text is no entry key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct EntryKeyFault;

impl EntryKeyFault {
    pub fn message(&self) -> Message {
        text_faults::text_entry_key(MAX_ENTRY_KEY_LENGTH)
    }
}

/// Finished models by entry.
pub type PaintedModels = BTreeMap<EntryKey, u32>;

/// One unit in a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Which unit of the collection this is.
    pub key: EntryKey,
    /// What it is in the catalogue.
    pub unit: UnitKey,
    /// Models fielded.
    pub models: u32,
    /// How often each option is taken; an absent option is not taken.
    pub options: BTreeMap<OptionKey, u32>,
    /// The entry this leader joins.
    pub joins: Option<EntryKey>,
}

impl Entry {
    /// How often the option is taken, 0 when it is not.
    pub fn takings(&self, option: &OptionKey) -> u32 {
        self.options.get(option).copied().unwrap_or(0)
    }
}

/// Why entries make no list at all, whatever the rules. The index is that of the entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ListFault {
    /// More than [`MAX_ENTRIES`].
    TooMany(usize),
    /// Two entries claim to be the same unit of the collection.
    Twice(usize, EntryKey),
    /// An entry joins one that the list does not hold, or itself.
    JoinsNothing(usize, EntryKey),
}

impl ListFault {
    pub fn message(&self) -> Message {
        match self {
            Self::TooMany(entries) => list_faults::list_fault_too_many(*entries, MAX_ENTRIES),
            Self::Twice(_, key) => list_faults::list_fault_twice(key),
            Self::JoinsNothing(_, key) => list_faults::list_fault_joins_nothing(key),
        }
    }
}

/// Entries of one faction. No two share a key and every joined entry exists.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ArmyList {
    faction: FactionKey,
    entries: Vec<Entry>,
    by_key: Vec<usize>,
}

impl ArmyList {
    /// Takes the entries in the player's order. An option taken zero times is left out.
    ///
    /// # Errors
    /// Every [`ListFault`].
    pub fn new(faction: FactionKey, mut entries: Vec<Entry>) -> Result<Self, Vec<ListFault>> {
        if entries.len() > MAX_ENTRIES {
            return Err(vec![ListFault::TooMany(entries.len())]);
        }
        for entry in &mut entries {
            entry.options.retain(|_, taken| *taken > 0);
        }
        let mut by_key: Vec<usize> = (0..entries.len()).collect();
        by_key.sort_by_key(|&i| entries.get(i).map(|entry| &entry.key));
        let list = Self {
            faction,
            entries,
            by_key,
        };
        let faults = list.faults();
        if faults.is_empty() {
            Ok(list)
        } else {
            Err(faults)
        }
    }

    fn faults(&self) -> Vec<ListFault> {
        let mut faults = Vec::new();
        for pair in self.by_key.windows(2) {
            if let &[first, second] = pair
                && let (Some(a), Some(b)) = (self.entries.get(first), self.entries.get(second))
                && a.key == b.key
            {
                faults.push(ListFault::Twice(second, b.key.clone()));
            }
        }
        for (i, entry) in self.entries.iter().enumerate() {
            if let Some(joined) = &entry.joins
                && (joined == &entry.key || self.entry(joined).is_none())
            {
                faults.push(ListFault::JoinsNothing(i, joined.clone()));
            }
        }
        faults
    }

    /// The faction all entries belong to.
    pub fn faction(&self) -> &FactionKey {
        &self.faction
    }

    /// The entries in the player's order.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The entry of this key, by binary search.
    pub fn entry(&self, key: &EntryKey) -> Option<&Entry> {
        self.entries.get(self.position(key)?)
    }

    /// Where in the player's order the entry of this key stands.
    pub fn position(&self, key: &EntryKey) -> Option<usize> {
        let found = self
            .by_key
            .binary_search_by(|&i| self.entries.get(i).map(|entry| &entry.key).cmp(&Some(key)))
            .ok()?;
        self.by_key.get(found).copied()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn entry(key: &str, joins: Option<&str>) -> Entry {
        Entry {
            key: EntryKey::new(key).unwrap(),
            unit: UnitKey::new("pole-hands").unwrap(),
            models: 8,
            options: BTreeMap::from([(OptionKey::new("pennant").unwrap(), 0)]),
            joins: joins.map(|key| EntryKey::new(key).unwrap()),
        }
    }

    fn list(entries: Vec<Entry>) -> Result<ArmyList, Vec<ListFault>> {
        ArmyList::new(FactionKey::new("sluicebond-syndics").unwrap(), entries)
    }

    #[test]
    fn an_entry_is_found_by_its_key_and_options_not_taken_are_left_out() {
        let list = list(vec![entry("b", Some("a")), entry("a", None)]).unwrap();
        let found = list.entry(&EntryKey::new("a").unwrap()).unwrap();
        assert_eq!(found, &list.entries()[1]);
        assert!(found.options.is_empty());
        assert_eq!(list.entry(&EntryKey::new("c").unwrap()), None);
    }

    #[test]
    fn doubled_keys_and_dangling_joins_are_all_reported() {
        let key = |text| EntryKey::new(text).unwrap();
        assert_eq!(
            list(vec![
                entry("a", Some("x")),
                entry("a", None),
                entry("b", Some("b"))
            ]),
            Err(vec![
                ListFault::Twice(1, key("a")),
                ListFault::JoinsNothing(0, key("x")),
                ListFault::JoinsNothing(2, key("b")),
            ])
        );
        assert_eq!(
            list((0..201).map(|i| entry(&i.to_string(), None)).collect()),
            Err(vec![ListFault::TooMany(201)])
        );
    }

    #[test]
    fn an_entry_key_is_short_plain_text() {
        for bad in ["", "a b", "ä", &"x".repeat(41)] {
            assert_eq!(EntryKey::new(bad), Err(EntryKeyFault), "{bad}");
        }
    }
}
