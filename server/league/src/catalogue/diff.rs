//! Diff of two versions of a catalogue, and the entries of a list that it touches.

use std::collections::HashSet;

use messages::{Message, Value, catalogue_faults as said, values};

use crate::catalogue::key::{FactionKey, UnitKey};
use crate::catalogue::unit::Unit;
use crate::catalogue::{Catalogue, Faction};
use crate::lists::army_list::{ArmyList, EntryKey};
use crate::lists::line::entry_points;
use crate::points::Points;

/// How a unit differs between two versions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Difference {
    /// Some price is higher and none lower.
    Dearer,
    /// Some price is lower and none higher.
    Cheaper,
    /// Some prices are higher, others lower.
    Repriced,
    /// The prices that both versions have are the same; sizes, options, keywords or limits differ.
    Altered,
    /// In the new version only.
    Added,
    /// In the old version only.
    Gone,
}

/// One unit that differs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnitDifference {
    pub faction: FactionKey,
    pub unit: UnitKey,
    /// Its name in the newest version that has it.
    pub name: String,
    pub difference: Difference,
}

/// Every unit that differs: the old version's units in their order, then those that are added.
pub fn diff(old: &Catalogue, new: &Catalogue) -> Vec<UnitDifference> {
    let mut differences = Vec::new();
    for faction in old.factions() {
        let now = new.faction(faction.key());
        for unit in faction.units() {
            let newer = now.and_then(|now| now.unit(&unit.key));
            let difference = newer.map_or(Some(Difference::Gone), |newer| compare(unit, newer));
            differences
                .extend(difference.map(|d| unit_difference(faction, newer.unwrap_or(unit), d)));
        }
    }
    for faction in new.factions() {
        let before = old.faction(faction.key());
        let added = faction
            .units()
            .iter()
            .filter(|unit| before.and_then(|before| before.unit(&unit.key)).is_none());
        differences.extend(added.map(|unit| unit_difference(faction, unit, Difference::Added)));
    }
    differences
}

fn unit_difference(faction: &Faction, unit: &Unit, difference: Difference) -> UnitDifference {
    UnitDifference {
        faction: faction.key().clone(),
        unit: unit.key.clone(),
        name: unit.name.to_string(),
        difference,
    }
}

fn compare(old: &Unit, new: &Unit) -> Option<Difference> {
    if old == new {
        return None;
    }
    let models: HashSet<u32> = old.sizes.iter().map(|size| size.models).collect();
    let sizes = old
        .sizes
        .iter()
        .filter_map(|size| Some((size.points, new.points_at(size.models)?)));
    let options = old.options.iter().flat_map(|option| {
        let newer = new.option(&option.key);
        models.iter().filter_map(move |&models| {
            Some((
                option.price.for_models(models),
                newer?.price.for_models(models),
            ))
        })
    });
    let (mut dearer, mut cheaper) = (false, false);
    for (before, now) in sizes.chain(options) {
        dearer |= now > before;
        cheaper |= now < before;
    }
    Some(match (dearer, cheaper) {
        (true, true) => Difference::Repriced,
        (true, false) => Difference::Dearer,
        (false, true) => Difference::Cheaper,
        (false, false) => Difference::Altered,
    })
}

/// The differences in one phrase: "3 units dearer, 1 gone", or "no unit changed".
pub fn summary(differences: &[UnitDifference]) -> Message {
    let kinds = [
        (Difference::Dearer, "dearer"),
        (Difference::Cheaper, "cheaper"),
        (Difference::Repriced, "repriced"),
        (Difference::Altered, "altered"),
        (Difference::Added, "added"),
        (Difference::Gone, "gone"),
    ];
    let counts = kinds.into_iter().map(|(kind, word)| {
        let count = differences.iter().filter(|d| d.difference == kind).count();
        (count, word)
    });
    let mut counts = counts.filter(|(count, _)| *count > 0);
    let Some((count, word)) = counts.next() else {
        return said::catalogue_diff_none();
    };
    let first = said::catalogue_diff_first(count, word);
    let others = counts.map(|(count, word)| said::catalogue_diff_next(count, word));
    let parts = Value::joined([first].into_iter().chain(others), values::comma);
    said::catalogue_diff(parts)
}

/// An entry of a list that a new version touches.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TouchedEntry {
    pub entry: EntryKey,
    /// The unit's name in the newest version that has it.
    pub name: String,
    /// Its points in the old version.
    pub before: Points,
    /// Its points in the new version; `None` when the unit, its size or an option is gone.
    pub now: Option<Points>,
}

/// The entries of a list whose points or availability differ between two versions. A list that is
/// sealed keeps its own version; this says what its player meets next week.
pub fn find_touched_entries(
    list: &ArmyList,
    old: &Catalogue,
    new: &Catalogue,
) -> Vec<TouchedEntry> {
    let (old, new) = (old.faction(list.faction()), new.faction(list.faction()));
    let entries = list.entries().iter().filter_map(|entry| {
        let unit = old.and_then(|old| old.unit(&entry.unit));
        let before = unit.map_or(Points::ZERO, |unit| entry_points(entry, unit));
        let offered = |unit: &&Unit| {
            unit.points_at(entry.models).is_some()
                && entry
                    .options
                    .keys()
                    .all(|option| unit.option(option).is_some())
        };
        let newer = new.and_then(|new| new.unit(&entry.unit));
        let now = newer.filter(offered).map(|unit| entry_points(entry, unit));
        let named = newer.or(unit);
        (now != Some(before)).then(|| TouchedEntry {
            entry: entry.key.clone(),
            name: named
                .map_or(entry.unit.as_str(), |unit| unit.name.as_str())
                .into(),
            before,
            now,
        })
    });
    entries.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::draft::CatalogueDraft;
    use crate::lists::samples::{draft, list};

    fn changed(change: impl Fn(&mut CatalogueDraft)) -> Catalogue {
        let mut draft = draft();
        change(&mut draft);
        Catalogue::build(&draft).unwrap()
    }

    /// Three units dearer, one cheaper, one repriced, one altered, one added, one gone.
    fn next_version() -> Catalogue {
        changed(|draft| {
            let units = &mut draft.factions[0].units;
            units[0].sizes[0].points += 5;
            units[1].options[0].points += 1;
            units[2].sizes[0].points += 1;
            units[3].sizes[0].points -= 1;
            units[4].sizes[0].points += 1;
            units[4].sizes[1].points -= 1;
            units[5].sizes.pop();
            units[6].key = "bog-trebuchet".into();
        })
    }

    #[test]
    fn the_difference_between_versions_is_one_phrase() {
        let old = changed(|_| ());
        assert_eq!(
            summary(&diff(&old, &next_version())).to_string(),
            "3 units dearer, 1 cheaper, 1 repriced up and down, 1 altered at the same price, \
             1 added, 1 gone"
        );
        assert_eq!(summary(&diff(&old, &old)).to_string(), "no unit changed");
    }

    #[test]
    fn a_faction_that_is_gone_takes_its_units_along() {
        let (old, new) = (changed(|_| ()), changed(|draft| drop(draft.factions.pop())));
        let gone = diff(&old, &new);
        assert_eq!(gone.len(), 1);
        assert_eq!(gone[0].difference, Difference::Gone);
        assert_eq!(diff(&new, &old)[0].difference, Difference::Added);
    }

    #[test]
    fn a_list_is_touched_where_its_own_sizes_and_options_are() {
        let list = list(
            "a mire-speaker 1, b sump-midwife 1, c turf-cutters 9, d bog-oak-hulks 4, \
             e bog-oak-hulks 3, f fen-trebuchet 4",
        );
        let touched = find_touched_entries(&list, &changed(|_| ()), &next_version());
        let described: Vec<_> = touched
            .iter()
            .map(|t| (t.entry.as_str(), t.before.get(), t.now.map(Points::get)))
            .collect();
        assert_eq!(
            described,
            [("a", 75, Some(80)), ("d", 180, None), ("f", 95, None)]
        );
    }
}
