//! Rules that no list can satisfy are found when the season is saved.

use std::collections::BTreeSet;

use reqwest::Method;
use serde_json::{Value, json};

use crate::harness::{Answer, Stage};

#[test]
fn a_season_that_asks_for_more_than_its_cap_is_refused_with_week_and_factions() {
    let stage = Stage::draft();
    let mut season = stage.season_body();
    season["policy"]["list_rules"] = spend(301);
    let seasons = format!("{}/seasons", stage.club);
    let refused = stage
        .wennable
        .post(&seasons, &season)
        .refused(422, "rules-unsatisfiable");
    let impossible = refused["impossible"].as_array().unwrap().iter();
    let (weeks, factions): (BTreeSet<_>, BTreeSet<_>) = impossible
        .map(|place| (place["week"].as_u64(), place["faction"].as_str()))
        .unzip();
    assert_eq!(weeks, [Some(1)].into());
    assert!(factions.len() > 3 && factions.contains(&Some("sodwether-moot")));
    let fault = &refused["errors"][0];
    assert_eq!(
        (&fault["code"], &fault["pointer"]),
        (&json!("rules.no-list"), &json!("/policy/list_rules"))
    );
    let detail = fault["detail"].as_str().unwrap();
    assert!(detail.starts_with("In week 1 no list of "), "{detail}");
}

#[test]
fn a_rule_about_a_kind_that_no_unit_has_is_found_at_its_place() {
    let stage = Stage::draft();
    let most = json!({ "kind": "fixed", "count": 1 });
    let rule = json!({ "kind": "kind_count", "unit_kind": "ferry", "most": most });
    let mut rules = spend(200);
    rules.as_array_mut().unwrap().push(json!({ "rule": rule }));
    let refused = update_rules(&stage, rules).refused(422, "rules-unsatisfiable");
    let fault = &refused["errors"][0];
    assert_eq!(
        (&fault["code"], &fault["pointer"]),
        (&json!("rules.unknown-kind"), &json!("/policy/list_rules/1"))
    );
}

#[test]
fn a_cap_does_not_fall_below_what_the_rules_ask_for() {
    let stage = Stage::draft();
    update_rules(&stage, spend(250)).expect(200);
    let cap = |cap: u32| {
        let week = stage.week(1);
        let body = json!({ "cap": cap });
        stage
            .wennable
            .ask(Method::PATCH, &week, |request| request.json(&body))
    };
    let refused = cap(200).refused(422, "rules-unsatisfiable");
    assert_eq!(refused["impossible"][0]["week"], 1);
    assert_eq!(refused["errors"][0]["pointer"], "");
    let kept = stage.wennable.get(&stage.week(1)).expect(200);
    assert_eq!(kept["cap"], 300);
    cap(280).expect(204);
}

fn spend(points: u32) -> Value {
    let least = json!({ "kind": "points", "points": points });
    json!([{ "rule": { "kind": "minimum_spend", "least": least } }])
}

fn update_rules(stage: &Stage, rules: Value) -> Answer {
    let season = stage.wennable.get(&stage.season).with_status(200);
    let version = season.header("etag").unwrap().to_owned();
    let mut policy = season.json()["policy"].clone();
    policy["list_rules"] = rules;
    let body = json!({ "policy": policy });
    stage.wennable.ask(Method::PATCH, &stage.season, |request| {
        request.json(&body).header("if-match", &version)
    })
}
