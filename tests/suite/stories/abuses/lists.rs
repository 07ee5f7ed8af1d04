//! Leave to hand in late.

use std::collections::BTreeSet;

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

/// Nobody plays against it, so nobody reads it; whoever withdraws after the opening takes nothing back.
#[test]
fn a_list_stays_sealed_whose_player_withdrew_before_the_opening() {
    let stage = Stage::draft();
    let people = ["Oskrel", "Corvanel", "Lumeth", "Pellamoor"];
    let [oskrel, corvanel, lumeth, pellamoor] = people.map(|handle| stage.join(handle));
    stage.start();
    let players = [&oskrel, &corvanel, &lumeth, &pellamoor];
    for (player, handle) in players.into_iter().zip(people) {
        seal(&stage, player, 1, &demo_list(handle, 1)).expect(201);
    }
    let painting = format!("{}/painting", stage.week(1));
    let claim = json!({ "unit": "tally-novice-1", "stages": { "finished": 1 } });
    corvanel.actor.post(&painting, &claim).expect(201);
    let withdraw = |player: &Player| {
        let path = format!("{}/players/{}/withdraw", stage.season, player.id);
        player.actor.post(&path, &json!({})).expect(200);
    };
    withdraw(&corvanel);
    stage.clock().show(DEADLINE);
    open(&stage, 1).expect(204);
    withdraw(&lumeth);

    let visitor = stage.server.visitor();
    let of = |found: &Value| -> BTreeSet<String> {
        let lists = found.as_array().unwrap().iter();
        let players = lists.map(|list| list["player"].as_str().unwrap().to_owned());
        players.collect()
    };
    let opened: BTreeSet<String> = [&oskrel, &lumeth, &pellamoor]
        .map(|player| player.id.clone())
        .into();
    let lists = visitor.get(&format!("{}/lists", stage.week(1))).expect(200);
    assert_eq!(of(&lists["lists"]), opened);
    let trail = visitor.get(&format!("{}/trail", stage.season)).expect(200);
    let acts = trail.as_array().unwrap().iter();
    let mut openings = acts.filter(|entry| entry["act"] == "open_lists");
    assert_eq!(of(&openings.next().unwrap()["facts"]["receipts"]), opened);
    let export = visitor.get(&format!("{}/export", stage.season)).expect(200);
    assert_eq!(of(&export["weeks"][0]["lists"]), opened);
    assert_eq!(export["painting"], json!([]));
    let page = stage.season.replacen("/api/v1", "", 1);
    let page = visitor
        .get(&format!("{page}/players/{}", corvanel.id))
        .text();
    assert!(
        page.contains("A list is shown here once all lists of its week are opened."),
        "{page}"
    );
    let claims = visitor.get(&format!("{}/painting", stage.season));
    assert_eq!(claims.expect(200), json!([]));

    let own = format!("{}/list", stage.week(1));
    let own = corvanel.actor.get(&own).expect(200);
    assert_eq!(own["sealed"]["list"], demo_list("Corvanel", 1));
}
