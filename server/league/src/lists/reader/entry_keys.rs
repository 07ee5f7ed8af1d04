//! Entry keys of a reading: last week's keys for the units that can be the same.

use std::collections::BTreeMap;

use super::{Meaning, Reading};
use crate::lists::army_list::{ArmyList, EntryKey};
use crate::lists::entry_keys::reuse_entry_keys;

impl Reading {
    /// The same reading with the keys of last week's units, in the list, in the lines and in the
    /// findings; see [`reuse_entry_keys`].
    #[must_use]
    pub fn with_reused_keys(mut self, previous: &ArmyList) -> Self {
        let Some(read) = self.list.take() else {
            return self;
        };
        let list = reuse_entry_keys(&read, previous);
        let keys = |list: &ArmyList| -> Vec<EntryKey> {
            list.entries()
                .iter()
                .map(|entry| entry.key.clone())
                .collect()
        };
        let renamed: BTreeMap<EntryKey, EntryKey> =
            keys(&read).into_iter().zip(keys(&list)).collect();
        let parts = self.lines.iter_mut().flat_map(|line| &mut line.parts);
        let of_lines = parts.filter_map(|part| match &mut part.meaning {
            Meaning::Unit { entries, .. } => Some(entries),
            _ => None,
        });
        let of_findings = self.findings.iter_mut().map(|finding| &mut finding.entries);
        for key in of_lines.chain(of_findings).flatten() {
            if let Some(new) = renamed.get(key) {
                *key = new.clone();
            }
        }
        self.list = Some(list);
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::key::FactionKey;
    use crate::lists::reader::parse;
    use crate::lists::samples::{catalogue, list};

    #[test]
    fn lines_findings_and_list_name_last_weeks_units_alike() {
        let moot = FactionKey::new("sodwether-moot").unwrap();
        let text = "Turf Cutters 8: 99\nRushlight Kin 6\nTurf Cutters 12";
        let reading = parse(text, &catalogue(), Some(&moot));
        let reading =
            reading.with_reused_keys(&list("old-guard turf-cutters 12, first turf-cutters 8"));
        let named = |meaning: &Meaning| match meaning {
            Meaning::Unit { entries, .. } => entries.iter().map(ToString::to_string).collect(),
            _ => Vec::new(),
        };
        let parts = reading.lines.iter().flat_map(|line| &line.parts);
        let of_lines: Vec<String> = parts.flat_map(|part| named(&part.meaning)).collect();
        let entries = reading.list.as_ref().unwrap().entries();
        let of_list: Vec<String> = entries.iter().map(|entry| entry.key.to_string()).collect();
        assert_eq!(of_list, ["first", "rushlight-kin-1", "old-guard"]);
        assert_eq!(of_lines, of_list);
        assert_eq!(
            reading.findings.len(),
            1,
            "99 points are not the catalogue's"
        );
        assert_eq!(reading.findings[0].entries[0].as_str(), "first");
    }
}
