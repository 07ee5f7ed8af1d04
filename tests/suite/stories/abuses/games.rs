//! An organiser who plays and would like to choose whom they meet.

use reqwest::Method;
use serde_json::{Value, json};

use super::super::results::week::{LISTS_DUE, Week};
use super::super::season::offline::verify;
use super::told;
use crate::harness::{Actor, Answer};

const PEOPLE: [&str; 5] = ["Wennable", "Braewick", "Gorseley", "Joryth", "Merrowick"];

/// The lists are opened. Wennable plays; Kestanby runs the season, too, and does not.
struct Table {
    week: Week,
    kestanby: Actor,
}

impl Table {
    fn set(handles: &[&str]) -> Self {
        let week = Week::sealed(handles);
        week.stage.clock().show(LISTS_DUE);
        week.act("weeks/1/lists/open", &json!({})).expect(204);
        let kestanby = week.stage.appoint("Kestanby", "organiser");
        Self { week, kestanby }
    }

    fn ids<const N: usize>(&self, places: [usize; N]) -> [&str; N] {
        places.map(|place| self.week.players[place].id.as_str())
    }

    /// Of Kestanby, who is neutral.
    fn neutral(&self, path: &str, body: &Value) -> Answer {
        let path = format!("{}/{path}", self.week.stage.season);
        self.kestanby.post(&path, body)
    }

    fn propose(&self, body: &Value) -> Answer {
        self.week.act("weeks/1/rounds", body)
    }

    fn live_with(&self, place: usize, household: &str) -> Answer {
        let stage = &self.week.stage;
        let path = format!("{}/players/{}", stage.season, self.week.players[place].id);
        let body = json!({ "household": household });
        stage
            .wennable
            .ask(Method::PATCH, &path, |request| request.json(&body))
    }

    /// Wennable sits out; then the first of the others falls ill.
    fn sits_out(&self) -> Value {
        let [one, two, three, four] = self.ids([1, 2, 3, 4]);
        let orders = json!({ "pins": [[one, two], [three, four]] });
        let round = self.neutral("weeks/1/rounds", &orders).expect(201);
        let round = round["id"].as_str().unwrap();
        self.week.publish(round);
        let body = json!({
            "reason": "One player less tonight",
            "availabilities": [{ "player": one, "nights": [] }],
        });
        let repairs = format!("rounds/{round}/repairs");
        self.week.act(&repairs, &body).expect(201)
    }
}

fn publish(repair: &Value) -> String {
    format!("rounds/{}/publish", repair["id"].as_str().unwrap())
}

#[test]
fn whoever_plays_chooses_no_opponent_by_orders_about_the_others() {
    let table = Table::set(&PEOPLE[..4]);
    let pair = table.ids([1, 2]);
    for order in ["pins", "forbidden"] {
        let orders = json!({ order: [pair] });
        table.propose(&orders).refused(403, "conflict-of-interest");
        table.neutral("weeks/1/rounds", &orders).expect(201);
    }
    let round = table.neutral("weeks/1/rounds", &json!({})).expect(201);
    table.week.publish(round["id"].as_str().unwrap());
    let repairs = format!("rounds/{}/repairs", round["id"].as_str().unwrap());
    let games = table.week.get("games");
    let theirs = games.as_array().unwrap().iter().find(|game| {
        let [own] = table.ids([0]);
        game["first"] != own && game["second"] != own
    });
    let theirs = theirs.unwrap();
    let orders = json!({
        "reason": "They met last night",
        "forbidden": [[theirs["first"], theirs["second"]]],
    });
    table
        .week
        .act(&repairs, &orders)
        .refused(403, "conflict-of-interest");
    table.neutral(&repairs, &orders).expect(201);
}

#[test]
fn whoever_plays_draws_a_round_once_and_everybody_reads_of_every_draw() {
    let table = Table::set(&PEOPLE[..4]);
    let first = table.propose(&json!({})).expect(201);
    let same = table.propose(&json!({})).expect(201);
    assert_eq!(first["proposal"]["games"], same["proposal"]["games"]);
    table.week.tell(&table.week.players[3], &[]).expect(204);
    table
        .propose(&json!({}))
        .refused(403, "conflict-of-interest");
    table.neutral("weeks/1/rounds", &json!({})).expect(201);
    let draws: Vec<Value> = told(&table.week.stage, "propose_round")
        .iter()
        .map(|facts| facts["draw"].clone())
        .collect();
    assert_eq!(draws.len(), 3);
    assert_eq!(draws[1], draws[2], "the same inputs, the same draw");
    assert_ne!(draws[0], draws[1]);
}

#[test]
fn who_lives_together_is_kept_apart_unnumbered_and_not_after_the_draw() {
    let table = Table::set(&PEOPLE[..4]);
    table
        .live_with(0, "kiln-yard")
        .refused(403, "conflict-of-interest");
    for place in [1, 2] {
        table.live_with(place, "mill-lane").expect(200);
    }
    let round = table.propose(&json!({})).expect(201);
    let mut pair = table.ids([1, 2]);
    pair.sort_unstable();
    assert_eq!(round["inputs"]["forbidden"], json!([pair]));
    let contenders = round["inputs"]["contenders"].as_array().unwrap();
    assert!(contenders.iter().all(|it| it.get("household").is_none()));
    table.live_with(3, "mill-lane").refused(409, "week-state");
    let again = json!({ "forbidden": round["inputs"]["forbidden"] });
    table.propose(&again).expect(201);
}

#[test]
fn a_repair_of_ones_own_game_waits_for_somebody_neutral() {
    let table = Table::set(&PEOPLE);
    let ilkamar = table.week.stage.appoint("Ilkamar", "referee");
    let repair = table.sits_out();
    let changes = repair["changes"].to_string();
    assert!(changes.contains(table.ids([0])[0]), "{changes}");
    table
        .week
        .act(&publish(&repair), &json!({}))
        .refused(403, "approval-required");
    let path = format!("{}/{}", table.week.stage.season, publish(&repair));
    ilkamar.post(&path, &json!({})).expect(200);

    // Now Wennable has a game, and their opponent falls ill: the referee repairs the round.
    let [own, opponent] = table.ids([0, 2]);
    let body = json!({
        "reason": "Another player less tonight",
        "availabilities": [{ "player": opponent, "nights": [] }],
    });
    let repairs = format!("rounds/{}/repairs", repair["id"].as_str().unwrap());
    table
        .week
        .act(&repairs, &body)
        .refused(403, "conflict-of-interest");
    let path = |path: &str| format!("{}/{path}", table.week.stage.season);
    let repair = ilkamar.post(&path(&repairs), &body).expect(201);
    ilkamar
        .post(&path(&publish(&repair)), &json!({}))
        .expect(200);
    let games = table.week.get("games");
    let games = games.as_array().unwrap();
    let alone = games.iter().find(|game| game["second"].is_null()).unwrap();
    assert_eq!(alone["first"], own);
    let (content, said) = verify(&table.week.get("export"));
    assert!(content, "{said}");
}

#[test]
fn where_nobody_else_may_the_one_organiser_publishes_the_repair_that_an_illness_forces() {
    let table = Table::set(&PEOPLE);
    let repair = table.sits_out();
    let stage = &table.week.stage;
    let account = table.kestanby.get("/api/v1/accounts/me").expect(200);
    let member = format!("{}/members/{}", stage.club, account["id"].as_str().unwrap());
    let player = json!({ "role": "player" });
    stage.wennable.put(&member, &player).expect(204);
    table.week.act(&publish(&repair), &json!({})).expect(200);
    assert_eq!(told(&table.week.stage, "publish_repair").len(), 1);
}
