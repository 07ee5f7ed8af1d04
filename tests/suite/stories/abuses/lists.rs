//! Leave to hand in late.

use serde_json::{Value, json};

use super::super::lists::{DEADLINE, open, seal, without_last_entry};
use crate::harness::{Answer, Player, Stage, demo_list};

fn grant(stage: &Stage, player: &Player) -> Answer {
    let body = json!({ "player": player.id, "reason": "Power cut in Mill Lane" });
    let path = format!("{}/late-leaves", stage.week(1));
    stage.wennable.post(&path, &body)
}

#[test]
fn leave_replaces_no_list_counts_once_and_ends_with_the_draw() {
    let stage = Stage::draft();
    let people = ["Oskrel", "Corvanel", "Lumeth", "Pellamoor"];
    let [oskrel, corvanel, lumeth, pellamoor] = people.map(|handle| stage.join(handle));
    stage.start();
    seal(&stage, &oskrel, 1, &demo_list("Oskrel", 1)).expect(201);
    stage.clock().show(DEADLINE);
    open(&stage, 1).expect(204);

    grant(&stage, &oskrel).expect(204);
    let other = without_last_entry(demo_list("Oskrel", 1));
    seal(&stage, &oskrel, 1, &other).refused(409, "list-locked");
    grant(&stage, &corvanel).expect(204);
    let first = demo_list("Corvanel", 1);
    let late = seal(&stage, &corvanel, 1, &first).expect(201);
    let second = without_last_entry(first);
    seal(&stage, &corvanel, 1, &second).refused(409, "list-locked");

    grant(&stage, &lumeth).expect(204);
    let rounds = format!("{}/rounds", stage.week(1));
    let round = stage.wennable.post(&rounds, &json!({})).expect(201);
    let receipts: &Vec<Value> = round["inputs"]["receipts"].as_array().unwrap();
    assert!(
        receipts.contains(&late["digest"]),
        "drawn from late lists, too"
    );
    seal(&stage, &lumeth, 1, &demo_list("Lumeth", 1)).refused(409, "list-locked");
    grant(&stage, &pellamoor).refused(409, "week-state");
}
