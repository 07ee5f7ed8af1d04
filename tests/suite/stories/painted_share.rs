//! Painted models count for a list once somebody has checked them.

use serde_json::{Value, json};

use super::lists::{DEADLINE, SECOND_WEEK, open, seal};
use crate::harness::{Player, Stage, demo_list};

#[test]
fn a_list_must_be_painted_in_part_and_only_verified_paint_counts() {
    let half = json!({ "part": 1, "whole": 2 });
    let rule = json!({ "rule": { "kind": "painted_share", "least": half }, "weeks": [2] });
    let stage = Stage::with(|season| {
        let rules = season["policy"]["list_rules"].as_array_mut().unwrap();
        rules.push(rule);
    });
    let oskrel = stage.join("Oskrel");
    let ilkamar = stage.appoint("Ilkamar", "referee");
    stage.start();
    seal(&stage, &oskrel, 1, &demo_list("Oskrel", 1)).expect(201);
    let units = [
        ("orchard-levy-1", 12),
        ("furrow-hares-1", 7),
        ("orchard-levy-2", 10),
    ];
    let claims = units.map(|(unit, models)| claim(&stage, &oskrel, unit, models));
    stage.clock().show(DEADLINE);
    open(&stage, 1).expect(204);
    stage.clock().show(SECOND_WEEK);
    assert_eq!(painted_points(&stage, &oskrel), 0);

    let verify = |claim: &str| {
        let path = format!("{}/painting/{claim}/verify", stage.season);
        ilkamar.post(&path, &json!({})).expect(200);
    };
    verify(&claims[0]);
    verify(&claims[1]);
    assert_eq!(painted_points(&stage, &oskrel), 70 + 70);
    verify(&claims[2]);
    seal(&stage, &oskrel, 2, &demo_list("Oskrel", 1)).expect(201);

    let collection = format!("{}/collection", stage.season);
    let units = oskrel.actor.get(&collection).expect(200);
    let units = units.as_array().unwrap().iter();
    let painted: Vec<_> = units
        .map(|unit| unit["painted"].as_u64().unwrap())
        .collect();
    assert_eq!(painted, [0, 12, 7, 10]);
}

/// The painted points of the list that is refused for them; at least 150 of its 300 must be.
fn painted_points(stage: &Stage, player: &Player) -> u64 {
    let refused = seal(stage, player, 2, &demo_list("Oskrel", 1)).refused(422, "list-breaks-rules");
    let [fault] = &refused["errors"].as_array().unwrap()[..] else {
        panic!("more than paint is missing: {refused}");
    };
    assert_eq!(
        (&fault["code"], &fault["limit"]),
        (&json!("list.painted-share"), &json!(150))
    );
    fault["actual"].as_u64().unwrap()
}

fn claim(stage: &Stage, player: &Player, unit: &str, finished: u32) -> String {
    let body = json!({ "unit": unit, "stages": { "finished": finished } });
    let path = format!("{}/painting", stage.week(1));
    let claim: Value = player.actor.post(&path, &body).expect(201);
    claim["id"].as_str().unwrap().to_owned()
}
