use std::collections::BTreeSet;

use serde_json::{Value, json};

use super::{PEOPLE, Short, meetings, pair};

fn by_score(per_week: u8) -> Value {
    json!({ "kind": "by_score", "per_week": per_week })
}

#[test]
fn a_second_round_in_a_week_pairs_everybody_anew_on_another_night() {
    let season = Short::begin(2, by_score(2), &PEOPLE);
    season.open(1);
    let first = season.pair(1);
    let second = season.propose(1).expect(201);
    assert_eq!(second["number"], 2);
    assert_eq!(second["inputs"]["rounds_left"], 2, "both of week 2");
    let history = second["inputs"]["history"].as_array().unwrap();
    assert_eq!(history.len(), 3, "the first round counts as met");
    let second = season.publish(&second);
    assert_eq!((meetings(&first).len(), meetings(&second).len()), (3, 3));
    let pairs: BTreeSet<_> = meetings(&first)
        .into_iter()
        .chain(meetings(&second))
        .map(pair)
        .collect();
    assert_eq!(pairs.len(), 6, "nobody meets again");
    let nights: BTreeSet<(String, String)> = meetings(&first)
        .into_iter()
        .chain(meetings(&second))
        .flat_map(|game| pair(game).map(|player| (player, game["night"].to_string())))
        .collect();
    assert_eq!(nights.len(), 12, "nobody plays twice on one night");
    season.propose(1).refused(409, "round-already-paired");

    season.open(2);
    let third = meetings(&season.pair(2)).len();
    let fourth = meetings(&season.pair(2)).len();
    assert_eq!((third, fourth), (3, 3));
    for week in 1..=2 {
        season.rule_out(week);
    }
    season.end();
}

#[test]
fn a_game_of_the_first_round_is_repaired_around_the_second() {
    let season = Short::begin(1, by_score(2), &PEOPLE);
    season.open(1);
    let round = season.propose(1).expect(201);
    let first = season.publish(&round);
    season.pair(1);
    let ill = first[0]["first"].clone();
    let body = json!({
        "reason": "One player less on that night",
        "availabilities": [{ "player": ill, "nights": [] }],
    });
    let path = format!("rounds/{}/repairs", round["id"].as_str().unwrap());
    let repair = season.act(&path, &body).expect(201);
    season.publish(&repair);
    let games = season.get("games?week=1");
    let places: Vec<String> = games
        .as_array()
        .unwrap()
        .iter()
        .filter(|game| !game["second"].is_null())
        .map(|game| format!("{} {}", game["night"], game["table"]))
        .collect();
    let distinct: BTreeSet<&String> = places.iter().collect();
    assert_eq!(
        distinct.len(),
        places.len(),
        "no table holds two games: {places:?}"
    );
    let of_ill = games.to_string().matches(ill.as_str().unwrap()).count();
    assert_eq!(of_ill, 1, "the game of the second round stays");
}

#[test]
fn a_week_has_a_number_of_rounds_that_it_can_have() {
    let stage = crate::harness::Stage::draft();
    for per_week in [0, 8] {
        let mut season = stage.season_body();
        season["policy"]["rounds"] = by_score(per_week);
        let path = format!("{}/seasons", stage.club);
        let problem = stage
            .wennable
            .post(&path, &season)
            .refused(422, "validation");
        assert_eq!(problem["errors"][0]["pointer"], "/policy/rounds/per_week");
        assert_eq!(problem["errors"][0]["limit"], 7);
    }
}

#[test]
fn who_withdraws_or_does_not_come_in_the_second_half_of_a_week_is_not_in_its_second_round() {
    let season = Short::begin(1, by_score(2), &PEOPLE);
    season.open(1);
    season.pair(1);
    let gone = &season.players[0];
    let path = format!("{}/players/{}/withdraw", season.stage.season, gone.id);
    gone.actor.post(&path, &json!({})).expect(200);
    let second = season.pair(1);
    assert!(!json!(second).to_string().contains(&gone.id), "{second:?}");
    assert_eq!(
        (meetings(&second).len(), second.len()),
        (2, 3),
        "five are left, one sits out"
    );
}

#[test]
fn a_second_round_that_was_proposed_before_the_first_was_repaired_is_proposed_anew() {
    let season = Short::begin(1, by_score(2), &PEOPLE);
    season.open(1);
    let round = season.propose(1).expect(201);
    let first = season.publish(&round);
    let second = season.propose(1).expect(201);
    season.show(1, "play_until_at");
    let body = json!({
        "reason": "One player less on that night",
        "availabilities": [{ "player": first[0]["first"], "nights": [] }],
    });
    let path = format!("rounds/{}/repairs", round["id"].as_str().unwrap());
    let repair = season.act(&path, &body).expect(201);
    season.publish(&repair);
    let stale = format!("rounds/{}/publish", second["id"].as_str().unwrap());
    season.act(&stale, &json!({})).refused(409, "week-state");
    season.pair(1);
}

/// FIDE Handbook C.04.1, article 1: the number of rounds is declared beforehand.
#[test]
fn the_number_of_rounds_is_fixed_once_the_season_has_started() {
    let season = Short::begin(1, by_score(1), &PEOPLE[..2]);
    let path = &season.stage.season;
    let seen = season.stage.wennable.get(path).expect(200);
    let mut policy = seen["policy"].clone();
    policy["rounds"] = by_score(2);
    let version = format!("\"{}\"", seen["version"]);
    let dress = |request: reqwest::blocking::RequestBuilder| {
        request
            .header("if-match", &version)
            .json(&json!({ "policy": policy }))
    };
    let wennable = &season.stage.wennable;
    wennable
        .ask(reqwest::Method::PATCH, path, dress)
        .refused(409, "season-fixed");
}
