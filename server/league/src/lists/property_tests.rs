//! Property tests of the check: what holds for every list.

use proptest::prelude::*;

use crate::catalogue::Catalogue;
use crate::catalogue::key::FactionKey;
use crate::lists::carry_over::Comparison;
use crate::lists::line::lines;
use crate::lists::samples::{catalogue, terms};
use crate::lists::{
    ArmyList, CheckReport, Entry, EntryKey, ListChangeKind, PreviousList, check, compare_lists,
    find_fits, reuse_entry_keys,
};
use crate::points::Points;

fn list_of(entries: Vec<Entry>) -> ArmyList {
    ArmyList::new(FactionKey::new("sodwether-moot").unwrap(), entries).unwrap()
}

fn report(list: &ArmyList, cap: u32) -> CheckReport {
    check(list, &catalogue(), &terms(cap, &[]))
}

/// Up to 8 entries of the sample faction, of any size up to 20 and with any of its options.
pub fn army() -> impl Strategy<Value = ArmyList> {
    let entry = (
        0_usize..8,
        0_u32..20,
        proptest::collection::vec(0_u32..3, 3),
    );
    proptest::collection::vec(entry, 0..8).prop_map(|drawn| {
        let catalogue = catalogue();
        let units = catalogue.factions()[0].units();
        let entries = drawn
            .into_iter()
            .enumerate()
            .map(|(i, (unit, models, taken))| {
                let unit = &units[unit];
                let options = unit.options.iter().zip(taken);
                Entry {
                    key: EntryKey::new(&format!("e{i}")).unwrap(),
                    unit: unit.key.clone(),
                    models,
                    options: options
                        .map(|(option, taken)| (option.key.clone(), taken))
                        .collect(),
                    joins: None,
                }
            });
        list_of(entries.collect())
    })
}

/// What the catalogue offers of a list: known units, in the largest size of no more models, with
/// options within their limits and one of each group.
pub fn as_offered(list: &ArmyList, catalogue: &Catalogue) -> ArmyList {
    let faction = catalogue.faction(list.faction()).unwrap();
    let offered = |entry: &Entry| {
        let unit = faction.unit(&entry.unit)?;
        let mut groups = Vec::new();
        let options = unit.options.iter().filter_map(|option| {
            let taken = entry.takings(&option.key).min(option.limit);
            if taken == 0 || option.group.is_some() && groups.contains(&&option.group) {
                return None;
            }
            groups.push(&option.group);
            Some((option.key.clone(), taken))
        });
        Some(Entry {
            options: options.collect(),
            models: unit.size_within(entry.models)?.models,
            ..entry.clone()
        })
    };
    list_of(list.entries().iter().filter_map(offered).collect())
}

proptest! {
    #[test]
    fn a_list_costs_what_its_entries_cost_alone(list in army()) {
        let alone = list.entries().iter().map(|entry| report(&list_of(vec![entry.clone()]), 0).total);
        prop_assert_eq!(report(&list, 0).total, alone.sum::<Points>());
    }

    #[test]
    fn the_order_of_entries_changes_neither_points_nor_findings(list in army()) {
        let backwards = list_of(list.entries().iter().rev().cloned().collect());
        let as_sets = |list: &ArmyList| {
            let report = report(list, 300);
            let mut found: Vec<_> = report.findings.iter().map(|f| (f.code, f.measured.map(|m| m.actual))).collect();
            found.sort_unstable();
            (report.total, found)
        };
        prop_assert_eq!(as_sets(&list), as_sets(&backwards));
    }

    #[test]
    fn the_cap_is_exact_to_the_point(list in army()) {
        let total = report(&list, 0).total.get();
        let over = |cap| report(&list, cap).findings.iter().any(|f| f.code == "list.over-cap");
        prop_assert!(!over(total));
        prop_assert!(total == 0 || over(total - 1));
    }

    #[test]
    fn what_stays_and_what_leaves_make_up_last_weeks_list(before in army(), now in army()) {
        let catalogue = catalogue();
        let before = as_offered(&before, &catalogue);
        let previous = PreviousList { list: &before, catalogue: &catalogue };
        let lines = lines(&now, &catalogue);
        let comparison = Comparison::new(previous, &now, &lines, &catalogue);
        prop_assert_eq!(comparison.kept_points() + comparison.left_points(), report(&before, 0).total);
        let old: Points = comparison.pairs.iter().map(|pair| pair.old_points()).sum();
        prop_assert!(old <= report(&now, 0).total);
    }

    #[test]
    fn the_same_list_again_changes_nothing(list in army()) {
        let catalogue = catalogue();
        let previous = PreviousList { list: &list, catalogue: &catalogue };
        let all = compare_lists(previous, &list, &catalogue);
        prop_assert!(all.iter().all(|change| change.kind == ListChangeKind::Unchanged));
        prop_assert_eq!(reuse_entry_keys(&list, &list), list);
    }

    #[test]
    fn keeping_identities_changes_keys_alone(before in army(), now in army()) {
        let kept = reuse_entry_keys(&now, &before);
        let bare = |list: &ArmyList| -> Vec<_> {
            let entries = list.entries().iter();
            entries.map(|entry| (entry.unit.clone(), entry.models, entry.options.clone())).collect()
        };
        prop_assert_eq!(bare(&kept), bare(&now));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    #[test]
    fn whatever_fits_a_list_brings_no_finding(list in army(), room in 0_u32..200) {
        let catalogue = catalogue();
        let cap = report(&list, 0).total.get() + room;
        let before = report(&list, cap).findings.len();
        for addition in find_fits(&list, &catalogue, &terms(cap, &[])).additions {
            for size in addition.sizes {
                let mut entries = list.entries().to_vec();
                entries.push(Entry {
                    key: EntryKey::new("added").unwrap(),
                    unit: addition.unit.clone(),
                    models: size.models,
                    options: [].into(),
                    joins: None,
                });
                prop_assert_eq!(report(&list_of(entries), cap).findings.len(), before);
            }
        }
    }
}
