//! A week that was announced.

use reqwest::Method;
use serde_json::{Value, json};
use tallyhost::demo::data;

use super::super::results::week::Week;
use super::told;
use crate::harness::{Answer, Stage};

fn change(stage: &Stage, body: &Value) -> Answer {
    let week = stage.week(1);
    stage
        .wennable
        .ask(Method::PATCH, &week, |request| request.json(body))
}

#[test]
fn an_announced_week_is_not_taken_back_to_change_the_cap_under_sealed_lists() {
    let week = Week::sealed(&["Oskrel", "Corvanel"]);
    let before = week.get("weeks/1");
    let back = json!({ "announce": "2026-01-12T19:59:59" });
    change(&week.stage, &back).refused(409, "season-fixed");
    change(&week.stage, &json!({ "cap": 100 })).refused(409, "season-fixed");
    assert_eq!(week.get("weeks/1"), before);

    let later = json!({ "lists_due": "2026-01-12T20:30:00" });
    change(&week.stage, &later).expect(204);
    assert_eq!(
        told(&week.stage, "update_week"),
        [json!({ "week": 1, "lists_due": "2026-01-12T19:30:00Z" })],
        "everybody reads what is another, and that alone"
    );
}

#[test]
fn the_end_of_play_does_not_come_sooner_once_the_games_are_known() {
    let week = Week::paired(&["Oskrel", "Corvanel"]);
    let sooner = json!({ "play_until": "2026-01-14T20:00:00" });
    change(&week.stage, &sooner).refused(409, "week-state");
    let later = json!({ "play_until": "2026-01-25T20:00:00" });
    change(&week.stage, &later).expect(204);
}

#[test]
fn a_title_that_was_revealed_stays_and_everybody_is_told_that_the_rest_changed() {
    let stage = Stage::draft();
    let scenario = format!("{}/scenario", stage.week(1));
    let body = |sheet: &Value, title: Value| json!({ "sheet": sheet, "title": title, "full": { "kind": "lists_opened" } });
    let at_once = || json!({ "kind": "announcement" });
    let mut sheet = data::sheets().unwrap()[0].clone();
    let put = |body: &Value| stage.wennable.put(&scenario, body);
    put(&body(&sheet, at_once())).expect(204);
    for handle in ["Oskrel", "Corvanel"] {
        stage.join(handle);
    }
    stage.start();
    put(&body(&sheet, json!({ "kind": "lists_opened" }))).refused(409, "season-fixed");
    put(&body(&sheet, at_once())).expect(204);
    assert_eq!(told(&stage, "update_scenario"), [json!({ "week": 1 })]);
    sheet["title"] = json!("Another crossing");
    put(&body(&sheet, at_once())).refused(409, "season-fixed");
}
