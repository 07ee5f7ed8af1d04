//! Before anything is said: the sum as it is typed, and what may still become of the table.

use serde_json::{Value, json};

use super::week::{Week, played};
use crate::harness::Stage;

const FOUR: [&str; 4] = ["Oskrel", "Corvanel", "Pellamoor", "Lumeth"];

#[test]
fn the_sum_is_shown_as_it_is_typed_and_nothing_is_saved() {
    let week = Week::paired(&["Oskrel", "Corvanel"]);
    let [first, _] = week.sides();
    let preview = |body: &Value| first.actor.post(&format!("{}/preview", week.game()), body);
    let possible = preview(&played((4, 144), (2, 108))).expect(200);
    assert_eq!(possible["kind"], "possible");
    let score = &possible["outcome"]["score"];
    assert_eq!(score["total"], json!({ "first": 12, "second": 7 }));
    assert_eq!(
        possible["league_points"],
        json!({ "first": 7, "second": 3 })
    );

    let impossible = preview(&played((4, 301), (3, 0))).expect(200);
    let found = impossible["impossible"].as_array().unwrap();
    let limits: Vec<_> = found
        .iter()
        .map(|found| (&found["limit"], &found["actual"]))
        .collect();
    assert_eq!(limits, [(&json!(300), &json!(301)), (&json!(6), &json!(7))]);
    let no_counts = json!({ "kind": "played", "counts": { "legs": 3 } });
    preview(&no_counts).refused(422, "validation");
    assert_eq!(week.get("games")[0]["slip"]["kind"], "awaited");
    assert_eq!(week.acts()[0], "publish_round");
}

#[test]
fn open_games_are_supposed_and_others_are_not() {
    let week = Week::paired(&FOUR);
    let [first, second] = week.sides();
    let game = week.get("games")[0]["id"].clone();
    let suppose = |game: &Value| {
        let score =
            json!({ "legs": [], "total": { "first": 3, "second": 18 }, "verdict": "second" });
        let outcome = json!({ "kind": "played", "score": score });
        week.act(
            "what-if",
            &json!({ "suppositions": [{ "game": game, "outcome": outcome }] }),
        )
    };
    let table = suppose(&game).expect(200);
    assert_eq!(
        (&table["rows"][0]["player"], &table["rows"][0]["total"]),
        (&json!(second.id), &json!(10))
    );
    assert!(week.lines(second).is_empty(), "nothing is saved");

    let report = week.report(first, "one", &played((4, 144), (2, 108)));
    report.expect(200);
    second
        .actor
        .post(&format!("{}/confirm", week.game()), &json!({}))
        .expect(200);
    for (game, code) in [
        (game, "what-if.not-open"),
        (json!(first.id), "what-if.no-such-game"),
    ] {
        let problem = suppose(&game).refused(422, "validation");
        let fault = &problem["errors"][0];
        assert_eq!(
            (&fault["code"], &fault["pointer"]),
            (&json!(code), &json!("/suppositions/0/game"))
        );
    }
}

#[test]
fn a_forecast_repeats_with_its_seed_and_says_its_error() {
    let week = Week::paired(&FOUR);
    week.stage.until_moments_are_told();
    let ask = |query: &str| week.get(&format!("forecast?{query}"));
    let forecast = ask("seed=7&runs=400");
    assert_eq!(forecast, ask("seed=7&runs=400"));
    assert_ne!(forecast["players"], ask("seed=8&runs=400")["players"]);
    assert_eq!(
        (&forecast["as_of"], &forecast["rounds_to_come"]),
        (&json!(1), &json!(7))
    );
    for player in forecast["players"].as_array().unwrap() {
        let ended = player["ended"].as_array().unwrap().iter();
        assert_eq!(ended.map(|runs| runs.as_u64().unwrap()).sum::<u64>(), 400);
        let at_rank = &player["at_rank"];
        assert_eq!(at_rank["trials"], 400);
        let share = at_rank["successes"].as_f64().unwrap() / 400.0;
        assert!(at_rank["low"].as_f64().unwrap() < share, "{player}");
        assert!(share < at_rank["high"].as_f64().unwrap(), "{player}");
    }
    let reach = format!("{}/players/{}/reach", week.stage.season, week.players[0].id);
    let refused = week.stage.wennable.get(&reach).refused(409, "too-open");
    assert_eq!(refused["rounds_to_come"], 7);
}

#[test]
fn a_share_is_said_only_of_enough_games_and_games_are_counted_from_the_first() {
    let week = Week::paired(&["Oskrel", "Corvanel"]);
    let [first, second] = week.sides();
    week.report(first, "one", &played((4, 144), (2, 108)))
        .expect(200);
    second
        .actor
        .post(&format!("{}/confirm", week.game()), &json!({}))
        .expect(200);
    let found = week.get("statistics");
    assert_eq!(found["fewest_games"], 10);
    let scenario = &found["scenarios"][0];
    assert_eq!(
        (&scenario["key"], &scenario["won"], &scenario["too_few"]),
        (&json!("Toll at the Ford"), &json!(1), &json!(true))
    );
    assert!(scenario["win_share"].is_null());
    assert_eq!(found["factions"].as_array().unwrap().len(), 2);
    assert_eq!(
        found["roles"],
        json!([]),
        "the ford is the same for both sides"
    );
    let met = found["met"]
        .as_array()
        .unwrap()
        .iter()
        .find(|met| met["player"] == *first.id);
    assert_eq!(met.unwrap()["opponents"], json!([second.id]));

    let awards = week.get("awards");
    assert_eq!(awards["is_final"], false);
    let most_games = awards["awards"]
        .as_array()
        .unwrap()
        .iter()
        .find(|award| award["prize"] == "most_games");
    assert_eq!(most_games.unwrap()["holders"].as_array().unwrap().len(), 2);
}

#[test]
fn what_a_rank_takes_is_exact_once_the_last_round_is_paired() {
    let stage = Stage::with(|season| season["caps"] = json!({ "kind": "list", "caps": [300] }));
    let week = Week::sealed_in(stage, &FOUR);
    let round = week.propose();
    week.publish(&round);
    let [first, second] = week.sides();
    let reach = |query: &str| week.get(&format!("players/{}/reach?{query}", first.id));
    let open = reach("rank=1");
    assert_eq!((&open["best"], &open["worst"]), (&json!(1), &json!(4)));
    assert_eq!(
        (&open["needed"], &open["enough"]),
        (&json!(5), &json!(null))
    );

    let ruling = json!({ "outcome": { "kind": "no_show", "absent": "first", "notice": "not_given" }, "reason": "Nobody came" });
    week.stage
        .wennable
        .post(&format!("{}/rule", week.game()), &ruling)
        .expect(200);
    let lost = reach("rank=1");
    assert_eq!((&lost["best"], &lost["needed"]), (&json!(4), &json!(null)));
    assert!(week.lines(second).contains(&("game".to_owned(), 7)));
}
