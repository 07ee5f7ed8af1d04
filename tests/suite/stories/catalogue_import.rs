//! A version of a catalogue comes in whole, from JSON or CSV, or with every fault named.

use reqwest::Method;
use serde_json::json;

use crate::harness::{Answer, Stage};

const CSV: &str = include_str!("../../../demo/catalogue.csv");

#[test]
fn the_same_catalogue_from_csv_is_another_version_that_changes_nothing() {
    let stage = Stage::draft();
    let version = import(&stage, "text/csv; charset=utf-8", CSV).location(201);
    assert!(version.ends_with("/versions/2"), "{version}");
    let first = version.replace("/versions/2", "/versions/1");
    let [first, second] = [&first, &version].map(|at| stage.owner.get(at).expect(200));
    assert_eq!(first, second);
    let changes = stage.catalogue.changes(2, 1).expect(200);
    assert_eq!(changes.summary, "no unit changed");
}

#[test]
fn every_fault_of_a_csv_is_named_with_its_row_and_column_and_nothing_is_imported() {
    let stage = Stage::draft();
    let csv = "faction,unit,kind,models,points,points_per_extra_model,options,minutes_per_model\r\n\
        Sodwether Moot,Turf Cutters,line,8-16,56,x,mud sledges,20\r\n\
        Sodwether Moot,Turf Cutters,line,5|10,55,,,-1\r\n\
        Sodwether Moot,Stilt Waders,swift,4\r\n";
    let refused = import(&stage, "text/csv", csv).refused(422, "invalid-catalogue");
    let faults = refused.faults.iter();
    let places: Vec<_> = faults
        .map(|fault| {
            let cell = (fault.row.unwrap(), fault.column.unwrap());
            (cell, fault.code.as_str())
        })
        .collect();
    assert_eq!(
        places,
        [
            ((2, 6), "csv.number"),
            ((2, 7), "csv.option"),
            ((3, 2), "catalogue.twice"),
            ((3, 5), "csv.sizes"),
            ((3, 8), "catalogue.out-of-range"),
            ((4, 0), "csv.cells"),
            ((4, 5), "csv.number"),
            ((4, 8), "csv.number"),
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
    assert_eq!(
        refused.pointers(),
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
    for method in [Method::PUT, Method::PATCH, Method::DELETE] {
        let nothing = json!({ "factions": [] });
        let change = stage
            .catalogue
            .ask::<()>(method, "versions/1", |request| request.json(&nothing));
        change.refused(405, "method-not-allowed");
    }
}

fn import(stage: &Stage, media_type: &str, text: &str) -> Answer {
    stage.catalogue.import_text(media_type, text)
}

fn newest(stage: &Stage) -> u64 {
    stage.club.catalogues().expect(200)[0].newest
}
