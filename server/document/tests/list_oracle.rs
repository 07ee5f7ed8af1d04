//! The check agrees with a naive one in another language, on random lists under random rules.
//!
//! `tests/oracles/lists.py` makes the cases and says what must be found.

#![allow(clippy::unwrap_used, clippy::panic, reason = "tests may fail loudly")]

use std::collections::BTreeMap;

use document::catalogue::CatalogueDocument;
use document::lists::army_list::ArmyListDocument;
use document::lists::report::{FindingDocument, ReportDocument};
use document::lists::rules::{ListRuleDocument, read_list_rules};
use league::catalogue::Catalogue;
use league::catalogue::key::FactionKey;
use league::lists::PaintedModels;
use league::lists::{ArmyList, EntryKey, ListTerms, PreviousList, check};
use league::points::Points;
use league::week::WeekNo;
use serde::Deserialize;
use serde_json::{Value, json};

#[derive(Deserialize)]
struct Oracle {
    catalogues: Vec<CatalogueDocument>,
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    catalogue: usize,
    previous_catalogue: usize,
    week: u8,
    cap: u32,
    faction: Option<String>,
    rules: Vec<ListRuleDocument>,
    list: ArmyListDocument,
    previous: Option<ArmyListDocument>,
    painted: Option<BTreeMap<String, u32>>,
    expected: Value,
}

#[test]
fn the_naive_checker_finds_the_same() {
    let text = include_str!("../../../tests/oracles/lists.json");
    let oracle: Oracle = serde_json::from_str(text).unwrap();
    let catalogues: Vec<Catalogue> = oracle
        .catalogues
        .into_iter()
        .map(|catalogue| catalogue.try_into().unwrap())
        .collect();
    assert_eq!(oracle.cases.len(), 250);
    for (number, case) in oracle.cases.into_iter().enumerate() {
        let expected = case.expected.clone();
        assert_eq!(
            summary(&checked(case, &catalogues)),
            expected,
            "case {number}"
        );
    }
}

fn checked(case: Case, catalogues: &[Catalogue]) -> ReportDocument {
    let list: ArmyList = case.list.try_into().unwrap();
    let previous: Option<ArmyList> = case.previous.map(|list| list.try_into().unwrap());
    let rules = read_list_rules(case.rules, "").unwrap();
    let faction = case.faction.map(|key| FactionKey::new(&key).unwrap());
    let painted: Option<PaintedModels> = case.painted.map(|painted| {
        let painted = painted.into_iter();
        painted
            .map(|(key, models)| (EntryKey::new(&key).unwrap(), models))
            .collect()
    });
    let terms = ListTerms {
        week: WeekNo::new(case.week).unwrap(),
        cap: Points::new(case.cap),
        rules: &rules,
        faction: faction.as_ref(),
        previous: previous.as_ref().map(|list| PreviousList {
            list,
            catalogue: &catalogues[case.previous_catalogue],
        }),
        painted: painted.as_ref(),
    };
    (&check(&list, &catalogues[case.catalogue], &terms)).into()
}

/// The report as the oracle writes it: findings in the order of their JSON, entries sorted.
fn summary(report: &ReportDocument) -> Value {
    let mut findings: Vec<Value> = report.findings.iter().map(row).collect();
    findings.sort_by_key(spaced);
    json!({
        "total": report.total,
        "left": report.left,
        "accepted": report.accepted,
        "findings": findings,
    })
}

fn row(finding: &FindingDocument) -> Value {
    let mut entries = finding.entries.clone();
    entries.sort();
    json!([
        finding.severity,
        finding.code,
        finding.limit,
        finding.actual,
        finding.about,
        entries
    ])
}

/// The row as Python's `json.dumps` writes it, by which the oracle sorts.
fn spaced(row: &Value) -> String {
    row.to_string().replace(',', ", ")
}
