//! The next season, started from one that is over.

use serde_json::{Value, json};
use tallyhost::demo::data;

use super::over::a_season_that_is_over;
use crate::harness::{Answer, Player, Stage, demo_list};

fn next(stage: &Stage, body: &Value) -> Answer {
    stage.wennable.post(&format!("{}/next", stage.season), body)
}

/// Thursday, 10 September 2026; the clocks of Berlin go back in its seventh week.
fn in_autumn() -> Value {
    json!({ "name": "Autumn at the ford", "first_day": "2026-09-10", "scenarios": true })
}

#[test]
fn the_next_season_keeps_rules_rhythm_and_scenarios_on_new_days_and_can_still_be_edited() {
    let stage = Stage::draft();
    let [scenario, ..] = &data::scenarios().unwrap()[..] else {
        panic!("the demo has scenarios");
    };
    let path = format!("{}/scenario", stage.week(1));
    stage.wennable.put(&path, scenario).expect(204);
    for handle in ["Oskrel", "Corvanel"] {
        stage.join(handle);
    }
    stage.start();
    let old = stage.wennable.get(&stage.season).expect(200);

    let mut body = in_autumn();
    let alone = next(&stage, &body).with_status(201).json();
    assert_eq!(alone["players"], json!([]));
    body["carry"] = json!("players");
    let made = next(&stage, &body).with_status(201);
    let new = made.header("location").unwrap().to_owned();
    let made = made.json();
    assert_eq!(made["players"].as_array().unwrap().len(), 2);
    let season = &made["season"];
    for same in [
        "visibility",
        "zone",
        "catalogue",
        "places",
        "policy",
        "rules",
    ] {
        assert_eq!(season[same], old[same], "{same}");
    }
    assert_eq!(
        (&season["state"], &season["seed_commitment"]),
        (&json!("draft"), &Value::Null)
    );
    stage.server.visitor().get(&new).refused(404, "not-found");

    let weeks = |season: &str| stage.wennable.get(&format!("{season}/weeks")).expect(200);
    let (old_weeks, new_weeks) = (weeks(&stage.season), weeks(&new));
    let of = |weeks: &Value, name: &str| -> Vec<Value> {
        let weeks = weeks.as_array().unwrap().iter();
        weeks.map(|week| week[name].clone()).collect()
    };
    assert_eq!(of(&old_weeks, "cap"), of(&new_weeks, "cap"));
    let due = of(&new_weeks, "lists_due");
    assert_eq!(due[5..7], ["2026-10-19T20:00:00", "2026-10-26T20:00:00"]);
    let due = of(&new_weeks, "lists_due_at");
    assert_eq!(due[5..7], ["2026-10-19T18:00:00Z", "2026-10-26T19:00:00Z"]);
    let night = &new_weeks[6]["nights"][0];
    assert_eq!(
        (&night["begins"], &night["tables"]),
        (&json!("2026-10-27T19:00:00"), &json!(6))
    );
    let sheet = |season: &str| {
        let path = format!("{season}/weeks/1/scenario");
        stage.wennable.get(&path).expect(200)
    };
    assert_eq!(sheet(&new), sheet(&stage.season));

    let week = json!({ "cap": 250 });
    let patch = |request: reqwest::blocking::RequestBuilder| request.json(&week);
    let path = format!("{new}/weeks/1");
    stage
        .wennable
        .ask(reqwest::Method::PATCH, &path, patch)
        .expect(204);
    let started = stage
        .wennable
        .post(&format!("{new}/start"), &json!({}))
        .expect(200);
    assert_ne!(started["seed_commitment"], old["seed_commitment"]);
    let trail = stage.wennable.get(&format!("{new}/trail")).expect(200);
    let made = trail.as_array().unwrap().iter();
    let made = made.filter(|entry| entry["act"] == "create_season_from");
    let from: Vec<_> = made.map(|entry| &entry["facts"]["from"]).collect();
    assert_eq!(from, [&old["id"]]);
}

#[test]
fn the_next_season_does_not_begin_years_ago() {
    let stage = Stage::draft();
    let mut body = in_autumn();
    body["first_day"] = json!("1999-09-09");
    let refused = next(&stage, &body).refused(422, "validation");
    let fault = &refused["errors"][0];
    assert_eq!(
        (&fault["pointer"], &fault["limit"], &fault["actual"]),
        (
            &json!("/first_day"),
            &json!("2025-01-04"),
            &json!("1999-09-09")
        )
    );
}

#[test]
fn a_first_day_of_another_weekday_or_in_the_hour_that_the_clocks_skip_is_refused() {
    let stage = Stage::with(|season| {
        season["caps"] = json!({ "kind": "list", "caps": [300] });
        season["calendar"]["announce"] = json!({ "day": 0, "time": "02:30:00" });
    });
    let mut body = in_autumn();
    body["first_day"] = json!("2026-09-12");
    let refused = next(&stage, &body).refused(422, "validation");
    let fault = &refused["errors"][0];
    assert_eq!(
        (&fault["code"], &fault["pointer"], &fault["limit"]),
        (
            &json!("season.weekday"),
            &json!("/first_day"),
            &json!("2026-09-10")
        )
    );
    body["other_weekdays"] = json!(true);
    next(&stage, &body).expect(201);
    body["first_day"] = json!("2027-03-28");
    let refused = next(&stage, &body).refused(422, "invalid-local-time");
    assert!(
        refused["errors"][0]["detail"]
            .as_str()
            .unwrap()
            .contains("announce of week 1"),
        "{refused}"
    );
}

#[test]
fn who_played_to_the_end_comes_along_and_a_painted_unit_stays_painted() {
    let week = a_season_that_is_over("public");
    let mut body = in_autumn();
    body["carry"] = json!("players_with_collections");
    next(&week.stage, &body).refused(409, "season-state");
    week.act("end", &json!({})).expect(200);
    let next = next(&week.stage, &body).with_status(201);
    let new = next.header("location").unwrap().to_owned();
    let next = next.json();
    let handles = |people: &Value| -> Vec<String> {
        let people = people.as_array().unwrap().iter();
        people
            .map(|one| one["handle"].as_str().unwrap().to_owned())
            .collect()
    };
    assert_eq!(handles(&next["players"]), ["Corvanel", "Oskrel"]);
    assert_eq!(
        next["left_out"],
        json!([
            { "handle": "Lumeth", "why": "left_the_club" },
            { "handle": "Pellamoor", "why": "withdrew" },
        ])
    );
    let oskrel = &week.players[0];
    let start = format!("{new}/start");
    week.stage.wennable.post(&start, &json!({})).expect(200);
    let collection = oskrel.actor.get(&format!("{new}/collection")).expect(200);
    let reeve = unit(&collection, "hedge-reeve-1");
    assert_eq!(
        (&reeve["models"], &reeve["painted"]),
        (&json!(1), &json!(1))
    );
    assert!(reeve["first_week"].is_null(), "{reeve}");
    let levy = unit(&collection, "orchard-levy-1");
    assert_eq!(levy["painted"], 0);

    week.stage.clock().show("2026-09-10T18:00:00+02:00");
    keeps_its_paint(&week.stage, &new, oskrel);
}

fn unit<'c>(collection: &'c Value, entry: &str) -> &'c Value {
    let mut units = collection.as_array().unwrap().iter();
    units.find(|unit| unit["entry"] == entry).unwrap()
}

/// The reeve cannot be claimed as new, and a pasted list knows it again by its name.
fn keeps_its_paint(stage: &Stage, new: &str, oskrel: &Player) {
    let claim = json!({ "unit": "hedge-reeve-1", "stages": { "finished": 1 } });
    let path = format!("{new}/weeks/1/painting");
    let refused = oskrel.actor.post(&path, &claim).refused(422, "validation");
    assert_eq!(refused["errors"][0]["code"], "painting.nothing-new");
    let read = oskrel
        .actor
        .post(
            &format!("{new}/weeks/1/list/read"),
            &json!({ "text": "Hedge-Reeve" }),
        )
        .expect(200);
    assert_eq!(read["list"]["entries"][0]["key"], "hedge-reeve-1", "{read}");
    only_what_is_fielded_is_told(stage, new, oskrel);
}

/// Oskrel fields the brought units again; Corvanel hands in nothing.
fn only_what_is_fielded_is_told(stage: &Stage, new: &str, oskrel: &Player) {
    let seal = format!("{new}/weeks/1/list/seal");
    oskrel
        .actor
        .post(&seal, &demo_list("Oskrel", 1))
        .expect(201);
    let brought = || {
        let export = stage
            .server
            .visitor()
            .get(&format!("{new}/export"))
            .expect(200);
        let players = export["players"].as_array().unwrap().clone();
        players.into_iter().map(|player| player["brought"].clone())
    };
    assert!(
        brought().all(|units| units.is_null()),
        "the lists are sealed"
    );
    stage.clock().show("2026-09-14T21:00:00+02:00");
    let open = format!("{new}/weeks/1/lists/open");
    stage.wennable.post(&open, &json!({})).expect(204);
    let told: Vec<Value> = brought().collect();
    assert!(told[0].is_null(), "Corvanel");
    let reeve = unit(&told[1], "hedge-reeve-1");
    assert_eq!(reeve["stages"]["finished"], 1);
    assert!(unit(&told[1], "orchard-levy-1")["stages"].is_null());
}
