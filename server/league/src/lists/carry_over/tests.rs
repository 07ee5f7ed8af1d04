//! Tests of the rules from week to week across a change of the catalogue.

use proptest::prelude::*;

use super::*;
use crate::catalogue::draft::{CatalogueDraft, UnitDraft};
use crate::lists::amount::Amount;
use crate::lists::check::{CheckReport, check};
use crate::lists::property_tests::{army, as_offered};
use crate::lists::rules::{CarryOver, ListRule, NewPoints, Rule, SwapAllowance};
use crate::lists::samples::{catalogue, draft, list, numbers, terms};
use crate::lists::terms::ListTerms;
use crate::share::Share;

/// The strictest rules from week to week: everything returns as it was, and nothing is new.
fn strictest() -> [ListRule; 3] {
    let nothing = Amount::Points(Points::ZERO);
    [
        Rule::CarryOver(CarryOver {
            returning: Share::ALL,
            may_shrink: false,
            may_drop_options: false,
        }),
        Rule::SwapAllowance(SwapAllowance { most: nothing }),
        Rule::NewPoints(NewPoints { most: nothing }),
    ]
    .map(ListRule::every_week)
}

/// The check of a list under the strictest rules, its catalogue changed since last week.
fn since(
    change: impl Fn(&mut CatalogueDraft),
    cap: u32,
    before: &str,
    now: &str,
) -> Vec<(&'static str, u32, u32)> {
    let mut draft = draft();
    change(&mut draft);
    let (old, new) = (catalogue(), Catalogue::build(&draft).unwrap());
    let (before, rules) = (list(before), strictest());
    let terms = ListTerms {
        previous: Some(PreviousList {
            list: &before,
            catalogue: &old,
        }),
        ..terms(cap, &rules)
    };
    let CheckReport { findings, .. } = check(&list(now), &new, &terms);
    numbers(&findings)
}

fn unit<'a>(draft: &'a mut CatalogueDraft, key: &str) -> &'a mut UnitDraft {
    let units = &mut draft.factions[0].units;
    units.iter_mut().find(|unit| unit.key == key).unwrap()
}

const BEFORE: &str = "a turf-cutters 10 mud-sledges, b stilt-waders 6, c fen-trebuchet 4";

#[test]
fn a_dearer_unit_neither_leaves_nor_is_new_and_counts_what_it_cost() {
    let dearer = |draft: &mut CatalogueDraft| {
        for size in &mut unit(draft, "stilt-waders").sizes {
            size.points += 40;
        }
    };
    assert_eq!(since(dearer, 500, BEFORE, BEFORE), []);
    let without = "a turf-cutters 10 mud-sledges, c fen-trebuchet 4";
    assert_eq!(
        since(dearer, 500, BEFORE, without),
        [("list.carry-over", 263, 173), ("list.swap", 0, 90)]
    );
}

#[test]
fn a_unit_that_is_gone_need_not_return_and_does_not_count_as_leaving() {
    let gone = |draft: &mut CatalogueDraft| {
        draft.factions[0]
            .units
            .retain(|unit| unit.key != "stilt-waders");
    };
    let without = "a turf-cutters 10 mud-sledges, c fen-trebuchet 4";
    assert_eq!(since(gone, 500, BEFORE, without), []);
    assert_eq!(
        since(gone, 500, BEFORE, BEFORE),
        [("list.unknown-unit", 0, 0)]
    );
    assert_eq!(
        since(gone, 500, BEFORE, "a turf-cutters 10 mud-sledges"),
        [("list.carry-over", 173, 78), ("list.swap", 0, 95)]
    );
}

#[test]
fn a_size_that_is_gone_returns_as_the_next_smaller_one() {
    let small = |draft: &mut CatalogueDraft| {
        unit(draft, "stilt-waders")
            .sizes
            .retain(|size| size.models != 6);
    };
    let smaller = "a turf-cutters 10 mud-sledges, b stilt-waders 5, c fen-trebuchet 4";
    assert_eq!(since(small, 500, BEFORE, smaller), []);
    let smallest = "a turf-cutters 10 mud-sledges, b stilt-waders 4, c fen-trebuchet 4";
    assert_eq!(
        since(small, 500, BEFORE, smallest),
        [
            ("list.carry-over", 248, 233),
            ("list.shrunk", 5, 4),
            ("list.swap", 0, 15)
        ]
    );
    let large_only = |draft: &mut CatalogueDraft| {
        unit(draft, "stilt-waders")
            .sizes
            .retain(|size| size.models > 6);
    };
    let without = "a turf-cutters 10 mud-sledges, c fen-trebuchet 4";
    assert_eq!(
        since(large_only, 500, BEFORE, without),
        [],
        "nobody is made to grow"
    );
}

#[test]
fn an_option_that_is_gone_or_now_excluded_may_be_dropped() {
    let plain = "a turf-cutters 10, b stilt-waders 6, c fen-trebuchet 4";
    let gone = |draft: &mut CatalogueDraft| {
        let options = &mut unit(draft, "turf-cutters").options;
        options.retain(|option| option.key != "mud-sledges");
    };
    assert_eq!(since(gone, 500, BEFORE, plain), []);
    let dropped = [
        ("list.carry-over", 263, 255),
        ("list.option-dropped", 1, 0),
        ("list.swap", 0, 8),
    ];
    assert_eq!(since(|_| (), 500, BEFORE, plain), dropped);

    let both = "a turf-cutters 10 mud-sledges long-spades";
    let exclusive = |draft: &mut CatalogueDraft| {
        for option in &mut unit(draft, "turf-cutters").options {
            option.group = Some("hands".into());
        }
    };
    for one in [
        "a turf-cutters 10 mud-sledges",
        "a turf-cutters 10 long-spades",
    ] {
        assert_eq!(since(exclusive, 500, both, one), [], "{one}");
    }
}

#[test]
fn what_no_longer_fits_beside_what_returns_may_leave_and_nothing_else() {
    let dearer = |draft: &mut CatalogueDraft| {
        for size in &mut unit(draft, "stilt-waders").sizes {
            size.points += 1;
        }
    };
    let (before, cap) = (BEFORE, 263);
    assert_eq!(
        since(dearer, cap, before, before),
        [("list.over-cap", 263, 264)]
    );
    let without = "b stilt-waders 6, c fen-trebuchet 4";
    assert_eq!(since(dearer, cap, before, without), []);
    let without_two = "b stilt-waders 6";
    assert_eq!(
        since(dearer, cap, before, without_two),
        [("list.carry-over", 263, 90), ("list.swap", 0, 173)],
        "each of the two would fit"
    );
    assert_eq!(
        since(|_| (), cap, before, without),
        [("list.carry-over", 263, 185), ("list.swap", 0, 78)],
        "everything fits when nothing became dearer"
    );
}

#[test]
fn a_faction_that_is_gone_binds_nobody() {
    let gone = |draft: &mut CatalogueDraft| drop(draft.factions.remove(0));
    let found = since(gone, 500, BEFORE, "");
    assert_eq!(found, [("list.unknown-faction", 0, 0)]);
}

/// Another version: of each unit its first sizes may be gone, its options, or the whole unit, and what
/// is left has other prices. The last unit stays: a faction has at least one.
fn next_version(fates: &[(u8, usize, i64)]) -> Catalogue {
    let mut draft = draft();
    let units = &mut draft.factions[0].units;
    for (unit, &(fate, gone, dearer)) in units.iter_mut().zip(fates) {
        if unit.sizes.len() > gone {
            unit.sizes.drain(..gone);
        }
        if fate == 1 {
            unit.options.clear();
        }
        for size in &mut unit.sizes {
            size.points = (size.points + dearer).max(1);
        }
        unit.joins = None;
    }
    let last = units.pop();
    let mut fates = fates.iter();
    units.retain(|_| fates.next().is_some_and(|&(fate, ..)| fate != 2));
    units.extend(last);
    Catalogue::build(&draft).unwrap()
}

proptest! {
    #[test]
    fn whatever_a_version_takes_away_the_rest_of_last_weeks_list_keeps_the_strictest_rules(
        drawn in army(),
        fates in proptest::collection::vec((0_u8..3, 0_usize..4, -20_i64..20), 8),
    ) {
        let (old, new) = (catalogue(), next_version(&fates));
        let before = as_offered(&drawn, &old);
        let cap = check(&before, &old, &terms(0, &[])).total;
        let rules = strictest();
        let terms = ListTerms {
            previous: Some(PreviousList { list: &before, catalogue: &old }),
            ..terms(cap.get(), &rules)
        };
        let mut kept = Vec::new();
        for entry in as_offered(&before, &new).entries() {
            kept.push(entry.clone());
            let list = ArmyList::new(before.faction().clone(), kept.clone()).unwrap();
            if check(&list, &new, &terms).total > cap {
                kept.pop();
            }
        }
        let now = ArmyList::new(before.faction().clone(), kept).unwrap();
        let found = check(&now, &new, &terms).findings;
        let broken: Vec<_> = found.iter().filter(|f| f.code != "list.most-per-army").collect();
        prop_assert_eq!(broken, Vec::<&crate::lists::Finding>::new());
    }
}
