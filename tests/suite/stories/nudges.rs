//! Reminding whoever owes something, without a word about who does not.

use serde_json::{Value, json};

use super::results::week::{LAST_NIGHT, Week, played};
use crate::harness::{Stage, demo_list};

const LISTS: &str = "lists";

fn nudge(stage: &Stage, about: &str) -> crate::harness::Answer {
    let path = format!("{}/reminders", stage.week(1));
    stage.wennable.post(&path, &json!({ "about": about }))
}

#[test]
fn whoever_has_no_sealed_list_is_reminded_and_the_trail_names_nobody() {
    let stage = Stage::draft();
    let [oskrel, corvanel, lumeth] =
        ["Oskrel", "Corvanel", "Lumeth"].map(|handle| stage.join(handle));
    stage.start();
    let list = demo_list("Oskrel", 1);
    let path = |act: &str| format!("{}/list/{act}", stage.week(1));
    oskrel.actor.post(&path("seal"), &list).expect(201);
    corvanel
        .actor
        .put(&path("draft"), &demo_list("Corvanel", 1))
        .expect(200);
    let told = nudge(&stage, LISTS).expect(200);
    let mut players: Vec<&str> = told["players"]
        .as_array()
        .unwrap()
        .iter()
        .filter_map(Value::as_str)
        .collect();
    players.sort_unstable();
    let mut missing = [corvanel.id.as_str(), lumeth.id.as_str()];
    missing.sort_unstable();
    assert_eq!(players, missing, "a draft is not handed in");

    let trail = format!("{}/trail", stage.season);
    let newest = stage.wennable.get(&trail).expect(200)[0].clone();
    assert_eq!(newest["act"], "send_reminders");
    assert_eq!(newest["facts"], json!({ "week": 1, "about": "lists" }));
    let public = oskrel.actor.get(&trail).expect(200).to_string();
    assert!(!public.contains("send_reminders"), "{public}");
}

#[test]
fn people_are_reminded_of_the_same_once_in_twelve_hours() {
    let stage = Stage::draft();
    stage.join("Oskrel");
    stage.start();
    nudge(&stage, LISTS).expect(200);
    let soon = nudge(&stage, LISTS).refused(429, "reminded-already");
    assert_eq!(soon["retry_after"], 12 * 60 * 60);
    stage.clock().show("2026-01-09T05:59:59.999999+01:00");
    nudge(&stage, LISTS).refused(429, "reminded-already");
    stage.clock().show("2026-01-09T06:00:00+01:00");
    nudge(&stage, LISTS).expect(200);
}

#[test]
fn nobody_is_reminded_of_what_is_not_due() {
    let week = Week::paired(&["Oskrel", "Corvanel"]);
    nudge(&week.stage, LISTS).refused(409, "week-state");
    week.stage.clock().show("2026-01-13T18:59:59+01:00");
    nudge(&week.stage, "results").refused(409, "week-state");
    week.stage.clock().show(LAST_NIGHT);
    let told = nudge(&week.stage, "results").expect(200);
    assert_eq!(told["players"].as_array().unwrap().len(), 2);
    let [first, _] = week.sides();
    week.report(first, "one", &played((4, 144), (2, 108)))
        .expect(200);
    week.stage.clock().show("2026-01-16T19:00:00+01:00");
    nudge(&week.stage, "results").refused(409, "week-state");
}
