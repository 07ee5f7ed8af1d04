//! A new version of a catalogue: what it changes, and who may know whose lists that touches.

use reqwest::Method;
use serde_json::{Value, json};
use tallyhost::demo::data;

use super::lists::{DEADLINE, open, save_draft, seal, without_last_entry};
use crate::harness::{Actor, Stage, demo_list};

#[test]
fn a_new_version_says_what_changed_and_tells_each_only_of_lists_that_they_may_know() {
    let stage = Stage::draft();
    let [oskrel, corvanel] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
    let ilkamar = stage.appoint("Ilkamar", "referee");
    stage.start();
    seal(&stage, &oskrel, 1, &demo_list("Oskrel", 1)).expect(201);
    let half = without_last_entry(without_last_entry(demo_list("Oskrel", 1)));
    save_draft(&stage, &oskrel, None, &half).expect(200);
    seal(&stage, &corvanel, 1, &demo_list("Corvanel", 1)).expect(201);
    import_next_version(&stage);

    let own = changes(&stage, &oskrel.actor);
    assert_eq!(own["summary"], "1 unit dearer, 1 gone");
    let [dearer, gone] = ["furrow-hares", "threshers"];
    let units = own["units"].as_array().unwrap().iter();
    let units: Vec<_> = units
        .map(|unit| (&unit["unit"], &unit["difference"]))
        .collect();
    assert_eq!(
        units,
        [
            (&json!(dearer), &json!("dearer")),
            (&json!(gone), &json!("gone"))
        ]
    );
    let [touched] = &own["own"].as_array().unwrap()[..] else {
        panic!("the draft has no hares: {own}");
    };
    assert_eq!(
        (&touched["week"], &touched["sealed"]),
        (&json!(1), &json!(true))
    );
    assert_eq!(
        touched["entries"],
        json!([{ "entry": "furrow-hares-1", "name": "Furrow Hares", "before": 70, "now": 75 }])
    );

    for other in [&corvanel.actor, &ilkamar, &stage.wennable] {
        let seen = changes(&stage, other);
        assert_eq!((&seen["own"], &seen["opened"]), (&json!([]), &json!([])));
    }
    stage.clock().show(DEADLINE);
    open(&stage, 1).expect(204);
    let seen = changes(&stage, &stage.wennable);
    let [opened] = &seen["opened"].as_array().unwrap()[..] else {
        panic!("one season runs: {seen}");
    };
    assert_eq!(
        (&opened["lists"], &opened["touched"]),
        (&json!(2), &json!(1))
    );
    assert_eq!(changes(&stage, &ilkamar)["opened"], json!([]));
}

#[test]
fn a_comparison_needs_two_versions_that_there_are() {
    let stage = Stage::draft();
    let versions = format!("{}/catalogues/{}/versions", stage.club, stage.catalogue);
    let ask = |query: &str| stage.wennable.get(&format!("{versions}/1/changes{query}"));
    assert_eq!(ask("?since=1").expect(200)["summary"], "no unit changed");
    ask("?since=2").refused(404, "not-found");
    ask("").refused(400, "invalid-parameter");
}

/// Furrow Hares cost 5 points more at every size, and the Threshers are gone.
fn import_next_version(stage: &Stage) {
    let mut catalogue = data::catalogue().unwrap();
    for faction in catalogue["factions"].as_array_mut().unwrap() {
        let units = faction["units"].as_array_mut().unwrap();
        units.retain(|unit| unit["key"] != "threshers");
        let hares = units
            .iter_mut()
            .filter(|unit| unit["key"] == "furrow-hares");
        for size in hares.flat_map(|unit| unit["sizes"].as_array_mut().unwrap()) {
            size["points"] = json!(size["points"].as_u64().unwrap() + 5);
        }
    }
    let versions = format!("{}/catalogues/{}/versions", stage.club, stage.catalogue);
    let import = |request: reqwest::blocking::RequestBuilder| request.json(&catalogue);
    stage
        .wennable
        .ask(Method::POST, &versions, import)
        .expect(201);
}

fn changes(stage: &Stage, by: &Actor) -> Value {
    let versions = format!("{}/catalogues/{}/versions", stage.club, stage.catalogue);
    by.get(&format!("{versions}/2/changes?since=1")).expect(200)
}
