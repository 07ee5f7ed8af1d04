//! A season that only waits to be ended.

use serde_json::json;

use super::super::results::week::{Week, played};
use crate::harness::{Actor, Stage};

const PEOPLE: [&str; 4] = ["Oskrel", "Corvanel", "Pellamoor", "Lumeth"];

/// One week, played to its end; Oskrel's reeve is painted, Pellamoor withdraws, and Lumeth leaves the
/// club. All that is left is to end it.
pub fn a_season_that_is_over(visibility: &str) -> Week {
    let stage = Stage::with(|season| {
        season["caps"] = json!({ "kind": "list", "caps": [300] });
        season["visibility"] = json!(visibility);
    });
    let week = Week::sealed_in(stage, &PEOPLE);
    let round = week.propose();
    week.publish(&round);
    let [oskrel, _, pellamoor, lumeth] = &week.players[..] else {
        panic!("four people play");
    };
    let painting = format!("{}/painting", week.stage.week(1));
    let claim = json!({ "unit": "hedge-reeve-1", "stages": { "finished": 1 } });
    let claim = oskrel.actor.post(&painting, &claim).expect(201);
    let claim = claim["id"].as_str().unwrap();
    let referee = week.stage.appoint("Ilkamar", "referee");
    let verify = format!("{}/painting/{claim}/verify", week.stage.season);
    referee.post(&verify, &json!({})).expect(200);
    week.stage.clock().show("2026-01-18T12:00:00+01:00");
    for game in week.get("games").as_array().unwrap() {
        let id = game["id"].as_str().unwrap();
        let ruling = json!({ "outcome": played((4, 144), (2, 108)), "reason": "As both said" });
        let path = format!("{}/games/{id}/rule", week.stage.season);
        referee.post(&path, &ruling).expect(200);
    }
    week.act("weeks/1/close", &json!({})).expect(204);
    let withdraw = format!("{}/players/{}/withdraw", week.stage.season, pellamoor.id);
    pellamoor.actor.post(&withdraw, &json!({})).expect(200);
    remove_from_club(&week.stage, &lumeth.actor);
    week
}

fn remove_from_club(stage: &Stage, who: &Actor) {
    let account = who.get("/api/v1/accounts/me").expect(200)["id"].clone();
    let member = format!("{}/members/{}", stage.club, account.as_str().unwrap());
    let delete = |request: reqwest::blocking::RequestBuilder| request;
    stage
        .wennable
        .ask(reqwest::Method::DELETE, &member, delete)
        .expect(204);
}
