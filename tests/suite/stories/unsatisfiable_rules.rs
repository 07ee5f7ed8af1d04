//! Rules that no list can satisfy are found when the season is saved.

use std::collections::BTreeSet;

use serde::Deserialize;
use serde_json::{Value, json};

use crate::harness::{Problem, Stage};

#[test]
fn a_season_that_asks_for_more_than_its_cap_is_refused_with_week_and_factions() {
    let stage = Stage::draft();
    let mut season = stage.season_body();
    season.list_rules(json!([spend(301)]));
    let refused = stage.club.create_season(&season);
    let refused = refused.refused(422, "rules-unsatisfiable");
    let (weeks, factions): (BTreeSet<_>, BTreeSet<_>) = impossible(&refused)
        .into_iter()
        .map(|place| (place.week, place.faction))
        .unzip();
    assert_eq!(weeks, [1].into());
    assert!(factions.len() > 3 && factions.contains("sodwether-moot"));
    let fault = &refused.faults[0];
    assert_eq!(
        (fault.code.as_str(), fault.pointer.as_str()),
        ("rules.no-list", "/policy/list_rules")
    );
    let detail = &fault.detail;
    assert!(detail.starts_with("In week 1 no list of "), "{detail}");
}

#[test]
fn a_rule_about_a_kind_that_no_unit_has_is_found_at_its_place() {
    let stage = Stage::draft();
    let most = json!({ "kind": "fixed", "count": 1 });
    let rule = json!({ "kind": "kind_count", "unit_kind": "ferry", "most": most });
    let rules = json!([spend(200), { "rule": rule }]);
    let refused = stage.season.update(&with_rules(&stage, rules));
    let refused = refused.refused(422, "rules-unsatisfiable");
    let fault = &refused.faults[0];
    assert_eq!(
        (fault.code.as_str(), fault.pointer.as_str()),
        ("rules.unknown-kind", "/policy/list_rules/1")
    );
}

#[test]
fn a_cap_does_not_fall_below_what_the_rules_ask_for() {
    let stage = Stage::draft();
    let rules = with_rules(&stage, json!([spend(250)]));
    stage.season.update(&rules).expect(200);
    let week = stage.week(1);
    let set_cap = |cap: u32| week.update(&json!({ "cap": cap }));
    let refused = set_cap(200).refused(422, "rules-unsatisfiable");
    assert_eq!(impossible(&refused)[0].week, 1);
    assert_eq!(refused.faults[0].pointer, "");
    assert_eq!(week.times().expect(200).cap, 300);
    set_cap(280).expect(204);
}

/// A week in which no list of a faction keeps the rules.
#[derive(Deserialize)]
struct Place {
    week: u8,
    faction: String,
}

fn impossible(refused: &Problem) -> Vec<Place> {
    Vec::deserialize(refused.member("impossible")).unwrap()
}

/// A list costs at least so many points.
fn spend(points: u32) -> Value {
    let least = json!({ "kind": "points", "points": points });
    json!({ "rule": { "kind": "minimum_spend", "least": least } })
}

/// The season's policy with other list rules.
fn with_rules(stage: &Stage, rules: Value) -> Value {
    let mut policy = stage.season.state().expect(200).policy;
    *policy.get_mut("list_rules").unwrap() = rules;
    json!({ "policy": policy })
}
