//! A player's record over the seasons of a club, as far as the player agrees.

use serde_json::{Value, json};

use super::Wall;
use crate::harness::{Actor, Answer};

fn consent(wall: &Wall) -> String {
    format!("{}/record-consent", wall.stage.club)
}

fn agree(wall: &Wall, actor: &Actor) -> String {
    let body = actor.put(&consent(wall), &json!({})).expect(200);
    body["address"].as_str().unwrap().to_owned()
}

fn read(wall: &Wall, address: &str) -> Answer {
    wall.stage.server.visitor().get(address)
}

fn places(record: &Value) -> Vec<(&str, &str)> {
    let places = record["places"].as_array().unwrap().iter();
    places
        .map(|place| {
            (
                place["name"].as_str().unwrap(),
                place["handle"].as_str().unwrap(),
            )
        })
        .collect()
}

#[test]
fn nobodys_record_is_open_unless_they_agree_and_only_as_long() {
    let wall = Wall::hang();
    let oskrel = &wall.oskrel.actor;
    let before = oskrel.get(&consent(&wall)).expect(200);
    assert_eq!(before, json!({ "agreed": false }));

    let address = agree(&wall, oskrel);
    assert_eq!(
        agree(&wall, oskrel),
        address,
        "agreeing twice changes nothing"
    );
    let record = read(&wall, &address).expect(200);
    assert_eq!(record["places"].as_array().unwrap().len(), 1);
    assert_eq!(record["places"][0]["handle"], "Oskrel");
    wall.give_a_point();
    assert_eq!(read(&wall, &address).expect(200)["places"][0]["total"], 1);
    let csv = read(&wall, &format!("{address}.csv")).with_status(200);
    assert!(csv.text().contains(",Oskrel,"), "{}", csv.text());

    let withdraw = |status| {
        let answer = oskrel.ask(reqwest::Method::DELETE, &consent(&wall), |request| request);
        answer.with_status(status);
    };
    withdraw(204);
    withdraw(404);
    read(&wall, &address).refused(404, "not-found");
    assert_ne!(
        agree(&wall, oskrel),
        address,
        "what was withdrawn leads nowhere again"
    );
    read(&wall, &address).refused(404, "not-found");
}

#[test]
fn a_record_tells_of_public_seasons_alone() {
    let wall = Wall::hang();
    let oskrel = &wall.oskrel.actor;
    let seasons = format!("{}/seasons", wall.stage.club);
    for (name, visibility) in [("Behind closed doors", "club"), ("Second light", "public")] {
        let mut body = wall.stage.season_body();
        body["name"] = json!(name);
        body["visibility"] = json!(visibility);
        let season = wall.stage.wennable.post(&seasons, &body).location(201);
        let place =
            json!({ "handle": "Oskrel the Old", "faction": "sodwether-moot", "nights": ["first"] });
        let players = format!("{season}/players");
        oskrel.post(&players, &place).with_status(201);
        let other =
            json!({ "handle": "Wennable", "faction": "sodwether-moot", "nights": ["first"] });
        wall.stage.wennable.post(&players, &other).with_status(201);
        let start = format!("{season}/start");
        wall.stage.wennable.post(&start, &json!({})).expect(200);
    }
    let record = read(&wall, &agree(&wall, oskrel)).expect(200);
    let found = places(&record);
    assert_eq!(found.len(), 2, "{record}");
    assert_eq!(found[0], ("Second light", "Oskrel the Old"));
    assert_eq!(found[1].1, "Oskrel");
}

#[test]
fn whoever_leaves_the_club_takes_the_record_along() {
    let wall = Wall::hang();
    let oskrel = &wall.oskrel.actor;
    let address = agree(&wall, oskrel);
    let account = oskrel.get("/api/v1/accounts/me").expect(200)["id"].clone();
    let member = format!("{}/members/{}", wall.stage.club, account.as_str().unwrap());
    let leave = oskrel.ask(reqwest::Method::DELETE, &member, |request| request);
    leave.with_status(204);
    read(&wall, &address).refused(404, "not-found");
}

#[test]
fn the_record_of_a_minor_stays_within_the_club() {
    let wall = Wall::hang();
    let account = wall.oskrel.actor.get("/api/v1/accounts/me").expect(200)["id"].clone();
    wall.stage.database.run(&format!(
        "UPDATE accounts SET minor = true, guardian_consent = true WHERE account_id = '{}'",
        account.as_str().unwrap()
    ));
    let refused = wall.oskrel.actor.put(&consent(&wall), &json!({}));
    refused.refused(403, "forbidden");
}
