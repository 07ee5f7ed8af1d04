//! The rules of the demo season are data, and its seeded troubles with lists come out.

#![allow(clippy::unwrap_used, clippy::panic, reason = "tests may fail loudly")]

use std::collections::BTreeMap;

use document::catalogue::CatalogueDocument;
use document::lists::army_list::{ArmyListDocument, EntryDocument};
use document::lists::report::ReportDocument;
use document::lists::rules::{ListRuleDocument, read_list_rules};
use league::catalogue::Catalogue;
use league::lists::rules::ListRule;
use league::lists::satisfiable::{LegalTotals, find_unsatisfiable, legal_totals};
use league::lists::{ArmyList, ListTerms, PreviousList, check};
use league::points::Points;
use league::week::WeekNo;

const CAPS: [u32; 8] = [300, 400, 500, 600, 600, 750, 900, 1000];

fn catalogue() -> Catalogue {
    let text = include_str!("../../../demo/catalogue.json");
    let document: CatalogueDocument = serde_json::from_str(text).unwrap();
    document.try_into().unwrap()
}

fn rule_documents() -> Vec<ListRuleDocument> {
    serde_json::from_str(include_str!("../../../demo/list_rules.json")).unwrap()
}

fn rules() -> Vec<ListRule> {
    read_list_rules(rule_documents(), "").unwrap()
}

/// Entries as "unit models option option", keyed by their place.
fn list(faction: &str, entries: &[&str]) -> ArmyList {
    let entries = entries.iter().enumerate().map(|(i, text)| {
        let mut words = text.split(' ');
        EntryDocument {
            key: format!("{i}"),
            unit: words.next().unwrap().into(),
            models: words.next().unwrap().parse().unwrap(),
            options: words
                .map(|option| (option.into(), 1))
                .collect::<BTreeMap<_, _>>(),
            joins: None,
        }
    });
    let document = ArmyListDocument {
        faction: faction.into(),
        entries: entries.collect(),
    };
    document.try_into().unwrap()
}

fn check_in_week(week: u8, list: &ArmyList, previous: Option<&ArmyList>) -> ReportDocument {
    let (catalogue, rules) = (catalogue(), rules());
    let terms = ListTerms {
        week: WeekNo::new(week).unwrap(),
        cap: Points::new(CAPS[usize::from(week) - 1]),
        rules: &rules,
        faction: Some(list.faction()),
        previous: previous.map(|list| PreviousList {
            list,
            catalogue: &catalogue,
        }),
        painted: None,
    };
    (&check(list, &catalogue, &terms)).into()
}

#[test]
fn the_rules_of_the_season_read_back_as_sentences() {
    let rules = rules();
    let sentences: Vec<String> = rules
        .iter()
        .map(|rule| rule.message().to_string())
        .collect();
    assert_eq!(
        sentences,
        [
            "A player keeps the faction declared for the season.",
            "Units of the kind leader: exactly 1 (weeks 1-5).",
            "Units of the kind leader: at least 1 and at most 2 (weeks 6-8).",
            "Units of the kind line: at least 1 per 250 points of the cap.",
            "Units of the kind colossus: at most 1 (weeks 4-8).",
            "No single unit costs more than 40 % of the cap (weeks 1-2).",
            "No single unit costs more than 35 % of the cap (weeks 3-5).",
            "No single unit costs more than 30 % of the cap (weeks 6-8).",
            "No unit with the keyword toughness 4 (weeks 1-3).",
            "The same unit (except of the kind line): at most 1 in one list (weeks 1-3).",
            "The same unit (except of the kind line): at most 2 in one list (weeks 4-8).",
            "The same unit of the kind line: at most 4 in one list.",
            "All of last week's points return; units may grow, not shrink; \
             options may be added, not dropped (weeks 2-4 and 6-8).",
            "At most 20 % of last week's points leave the list (week 5).",
        ]
    );
}

#[test]
fn the_rules_written_out_read_back_the_same() {
    let written: Vec<ListRuleDocument> = rules().iter().map(Into::into).collect();
    assert_eq!(read_list_rules(written, "").unwrap(), rules());
}

#[test]
fn every_faction_can_be_legal_in_every_week_of_the_season() {
    let weeks = (1..).filter_map(WeekNo::new);
    let caps: Vec<_> = weeks.zip(CAPS.map(Points::new)).collect();
    assert_eq!(find_unsatisfiable(&rules(), &caps, &catalogue()), []);
    for faction in catalogue().factions() {
        for &(week, cap) in &caps {
            let LegalTotals::Between(_, most) = legal_totals(faction, &rules(), week, cap) else {
                panic!("{week} {}", faction.name())
            };
            assert_eq!(most, cap, "{} fills the cap of week {week}", faction.name());
        }
    }
}

#[test]
fn three_bog_oak_hulks_are_too_many_at_cap_300() {
    let others = ["mire-speaker 1", "turf-cutters 8"];
    let moot = |hulks| list("sodwether-moot", &[others[0], others[1], hulks]);
    let report = check_in_week(1, &moot("bog-oak-hulks 3"), None);
    assert!(!report.accepted);
    let [finding] = report.findings.as_slice() else {
        panic!("{report:?}")
    };
    assert_eq!(finding.code, "list.largest-unit");
    assert_eq!((finding.limit, finding.actual), (Some(120), Some(135)));
    assert_eq!(finding.entries, ["2"]);
    assert_eq!(
        finding.sentence,
        "Bog-Oak Hulks costs 135 points; a single unit may cost at most 120."
    );
    assert!(check_in_week(1, &moot("bog-oak-hulks 2"), None).accepted);
}

#[test]
fn the_brass_meridian_fits_cap_600_without_its_outer_ring_alone() {
    let orrery = |meridian| {
        list(
            "vesper-orrery",
            &[
                "dusk-almoner 1",
                "lantern-clerks 6",
                "ratchet-pages 5",
                meridian,
            ],
        )
    };
    let report = check_in_week(4, &orrery("brass-meridian 1 outer-ring"), None);
    let [finding] = report.findings.as_slice() else {
        panic!("{report:?}")
    };
    assert_eq!(finding.code, "list.largest-unit");
    assert_eq!((finding.limit, finding.actual), (Some(210), Some(215)));
    assert_eq!(finding.difference, Some(5));
    let report = check_in_week(4, &orrery("brass-meridian 1"), None);
    assert!(report.accepted, "{report:?}");
    assert_eq!((report.total, report.left), (90 + 60 + 45 + 190, 215));
    let report = check_in_week(3, &orrery("brass-meridian 1"), None);
    let codes: Vec<_> = report.findings.iter().map(|f| f.code.as_str()).collect();
    assert_eq!(codes, ["list.largest-unit", "list.banned-keyword"]);
}

#[test]
fn in_the_refit_week_120_of_600_points_may_leave_and_125_may_not() {
    let steadings = |entries: &[&str]| list("bramblestile-steadings", entries);
    let week_4 = steadings(&[
        "hedge-reeve 1",
        "orchard-levy 20",
        "stile-keepers 10",
        "furrow-hares 12",
        "threshers 5",
        "orchard-levy 14",
        "stile-keepers 5",
    ]);
    let report = check_in_week(4, &week_4, None);
    assert!(report.accepted && report.total == 600, "{report:?}");

    let swapped = |levy| {
        let ballista = "cider-ballista 3 hot-kegs";
        let [reeve, keepers, threshers] = ["hedge-reeve 1", "stile-keepers 10", "threshers 5"];
        steadings(&[
            reeve,
            levy,
            keepers,
            ballista,
            threshers,
            "orchard-levy 14",
            "stile-keepers 5",
        ])
    };
    let report = check_in_week(5, &swapped("orchard-levy 19"), Some(&week_4));
    let [finding] = report.findings.as_slice() else {
        panic!("{report:?}")
    };
    assert_eq!(finding.code, "list.swap");
    assert_eq!((finding.limit, finding.actual), (Some(120), Some(125)));
    assert_eq!(finding.entries, ["1", "3"]);
    assert_eq!(
        finding.sentence,
        "125 of last week's 600 points leave; at most 120 may. \
         Leaving in whole or part: Orchard Levy, Furrow Hares."
    );
    let report = check_in_week(5, &swapped("orchard-levy 20"), Some(&week_4));
    assert!(report.accepted, "{report:?}");
}

#[test]
fn everything_carries_over_and_the_missing_unit_is_named() {
    let week_3 = list(
        "sodwether-moot",
        &["mire-speaker 1", "turf-cutters 8", "rushlight-kin 6"],
    );
    let week_4 = list(
        "sodwether-moot",
        &["mire-speaker 1", "turf-cutters 9 mud-sledges"],
    );
    let report = check_in_week(4, &week_4, Some(&week_3));
    let carried = report
        .findings
        .iter()
        .find(|finding| finding.code == "list.carry-over")
        .unwrap();
    assert_eq!((carried.limit, carried.actual), (Some(179), Some(131)));
    assert_eq!(carried.entries, ["2"]);
    assert!(carried.sentence.ends_with("Rushlight Kin."), "{carried:?}");
}

#[test]
fn faults_of_all_rules_are_told_with_their_place() {
    let documents = serde_json::from_str(
        r#"[
            {"rule": {"kind": "largest_unit", "most": {"kind": "share", "part": 1, "whole": 0}}},
            {"rule": {"kind": "kind_count", "unit_kind": "Line"}, "weeks": [1, 1]},
            {"rule": {"kind": "painted_share", "least": {"part": 3, "whole": 2}}},
            {"rule": {"kind": "copies", "most": {"kind": "per_points", "points": 0}}},
            {"rule": {"kind": "banned_keywords", "keywords": []}, "weeks": [53]}
        ]"#,
    )
    .unwrap();
    let faults = read_list_rules(documents, "/list_rules").unwrap_err();
    let places: Vec<&str> = faults.iter().map(|fault| fault.pointer.as_str()).collect();
    assert_eq!(
        places,
        [
            "/list_rules/0/rule/most",
            "/list_rules/1/weeks",
            "/list_rules/1/rule/unit_kind",
            "/list_rules/1/rule",
            "/list_rules/2/rule/least",
            "/list_rules/3/rule/most/points",
            "/list_rules/4/weeks",
            "/list_rules/4/rule/keywords",
        ]
    );
}

#[test]
fn an_unknown_member_of_a_rule_is_refused() {
    let text = r#"{"rule": {"kind": "new_units", "least": 1, "most": 2}}"#;
    assert!(serde_json::from_str::<ListRuleDocument>(text).is_err());
    let text = r#"{"rule": {"kind": "faction_lock", "for": "ever"}}"#;
    assert!(serde_json::from_str::<ListRuleDocument>(text).is_err());
}
