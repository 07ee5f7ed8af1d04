//! A version of a catalogue comes in whole, from JSON or CSV, or with every fault named.

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::{Value, json};

use crate::harness::{Answer, Stage};

const CSV: &str = include_str!("../../../demo/catalogue.csv");

#[test]
fn the_same_catalogue_from_csv_is_another_version_that_changes_nothing() {
    let stage = Stage::draft();
    let version = import(&stage, "text/csv; charset=utf-8", CSV).location(201);
    assert!(version.ends_with("/versions/2"), "{version}");
    let first = version.replace("/versions/2", "/versions/1");
    let [first, second] = [&first, &version].map(|at| stage.wennable.get(at).expect(200));
    assert_eq!(first, second);
    let changes = stage.wennable.get(&format!("{version}/changes?since=1"));
    assert_eq!(changes.expect(200)["summary"], "no unit changed");
}

#[test]
fn every_fault_of_a_csv_is_named_with_its_row_and_column_and_nothing_is_imported() {
    let stage = Stage::draft();
    let csv = "faction,unit,kind,models,points,points_per_extra_model,options,minutes_per_model\r\n\
        Sodwether Moot,Turf Cutters,line,8-16,56,x,mud sledges,20\r\n\
        Sodwether Moot,Turf Cutters,line,5|10,55,,,-1\r\n\
        Sodwether Moot,Stilt Waders,swift,4\r\n";
    let refused = import(&stage, "text/csv", csv).refused(422, "invalid-catalogue");
    let places: Vec<_> = faults(&refused)
        .iter()
        .map(|fault| {
            let [row, column] = ["row", "column"].map(|name| fault[name].as_u64().unwrap());
            (row, column, fault["code"].as_str().unwrap())
        })
        .collect();
    assert_eq!(
        places,
        [
            (2, 6, "csv.number"),
            (2, 7, "csv.option"),
            (3, 2, "catalogue.twice"),
            (3, 5, "csv.sizes"),
            (3, 8, "catalogue.out-of-range"),
            (4, 0, "csv.cells"),
            (4, 5, "csv.number"),
            (4, 8, "csv.number"),
        ],
        "{refused}"
    );
    assert_eq!(newest(&stage), 1);
}

#[test]
fn every_fault_of_a_json_is_named_with_its_place_and_nothing_is_imported() {
    let stage = Stage::draft();
    let unit = |key: &str, models: i64, points: i64| {
        json!({ "key": key, "name": key, "kind": "line", "minutes_per_model": 20,
                "sizes": [{ "models": models, "points": points }] })
    };
    let units = [
        unit("levy", 10, -1),
        unit("levy", 0, 50),
        unit("Big Boar", 1, 155),
    ];
    let faction = json!({ "key": "steadings", "name": "Steadings", "units": units });
    let body = json!({ "factions": [faction] }).to_string();
    let refused = import(&stage, "application/json", &body).refused(422, "invalid-catalogue");
    let pointers: Vec<_> = faults(&refused)
        .iter()
        .map(|fault| fault["pointer"].as_str().unwrap())
        .collect();
    assert_eq!(
        pointers,
        [
            "/factions/0/units/0/sizes/0/points",
            "/factions/0/units/1/key",
            "/factions/0/units/1/sizes/0/models",
            "/factions/0/units/2/key",
        ],
        "{refused}"
    );
    assert_eq!(newest(&stage), 1);
}

#[test]
fn a_version_that_is_there_is_never_changed() {
    let stage = Stage::draft();
    let version = format!("{}/1", versions(&stage));
    for method in [Method::PUT, Method::PATCH, Method::DELETE] {
        let change = |request: RequestBuilder| request.json(&json!({ "factions": [] }));
        let answer = stage.wennable.ask(method, &version, change);
        answer.refused(405, "method-not-allowed");
    }
}

fn import(stage: &Stage, kind: &str, text: &str) -> Answer {
    let dress =
        |request: RequestBuilder| request.header("content-type", kind).body(text.to_owned());
    stage.wennable.ask(Method::POST, &versions(stage), dress)
}

fn versions(stage: &Stage) -> String {
    format!("{}/catalogues/{}/versions", stage.club, stage.catalogue)
}

fn newest(stage: &Stage) -> u64 {
    let catalogues = stage.wennable.get(&format!("{}/catalogues", stage.club));
    catalogues.expect(200)[0]["newest"].as_u64().unwrap()
}

fn faults(problem: &Value) -> &[Value] {
    problem["errors"].as_array().unwrap()
}
