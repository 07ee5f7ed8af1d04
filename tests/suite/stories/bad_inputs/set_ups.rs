//! Seasons that cannot be played as they are written.

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::{Value, json};

use super::{Said, Scene, said};
use crate::harness::Stage;

#[test]
fn a_season_that_cannot_be_played_as_it_is_written_is_not_set_up() {
    let scene = Scene::set();
    let seasons = format!("{}/seasons", scene.stage.club);
    let cases: [(&str, Value, Said<'_>); 7] = [
        (
            "a rule for week 9 of 8",
            scene.season(|body| {
                body["policy"]["list_rules"] =
                    json!([{ "rule": { "kind": "faction_lock" }, "weeks": [8, 9] }]);
            }),
            (
                "policy.weeks",
                "/policy/list_rules/0/weeks/1",
                json!(8),
                json!(9),
            ),
        ),
        (
            "a factor on week 9",
            scene.season(|body| body["policy"]["scoring"]["weights"] = json!({ "9": 2 })),
            (
                "policy.weeks",
                "/policy/scoring/weights/9",
                json!(8),
                json!(9),
            ),
        ),
        (
            "the best nine weeks",
            scene.season(|body| body["policy"]["scoring"]["best_weeks"] = json!(9)),
            (
                "policy.best-weeks",
                "/policy/scoring/best_weeks",
                json!(8),
                json!(9),
            ),
        ),
        (
            "three rounds on two nights",
            scene.season(|body| {
                body["policy"]["rounds"] = json!({ "kind": "by_score", "per_week": 3 });
            }),
            (
                "policy.rounds",
                "/policy/rounds/per_week",
                json!(2),
                json!(3),
            ),
        ),
        (
            "a round robin of twenty in sixteen rounds",
            scene.season(|body| {
                body["policy"]["rounds"] = json!({ "kind": "round_robin", "per_week": 2 });
            }),
            ("policy.round-robin", "/policy/rounds", json!(19), json!(16)),
        ),
        (
            "a first day of 1999",
            scene.season(|body| body["calendar"]["first_day"] = json!("1999-01-07")),
            (
                "season.first-day",
                "/calendar/first_day",
                json!("2025-01-07"),
                json!("1999-01-07"),
            ),
        ),
        (
            "a first day of 2030",
            scene.season(|body| body["calendar"]["first_day"] = json!("2030-01-03")),
            (
                "season.first-day",
                "/calendar/first_day",
                json!("2028-01-09"),
                json!("2030-01-03"),
            ),
        ),
    ];
    for (name, body, expected) in cases {
        let problem = scene.nothing_written(name, || {
            let post = scene.stage.wennable.post(&seasons, &body);
            post.refused(422, "validation")
        });
        assert_eq!(said(&problem), [expected], "{name}: {problem}");
    }
}

#[test]
fn a_season_does_not_start_without_two_who_play() {
    let stage = Stage::draft();
    let start = format!("{}/start", stage.season);
    let [oskrel, _] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
    let withdraw = format!("{}/players/{}/withdraw", stage.season, oskrel.id);
    oskrel.actor.post(&withdraw, &json!({})).expect(200);
    let refused = stage.wennable.post(&start, &json!({}));
    let refused = refused.refused(409, "not-enough-players");
    assert_eq!(
        (&refused["limit"], &refused["actual"]),
        (&json!(2), &json!(1))
    );
    stage.join("Pellamoor");
    stage.wennable.post(&start, &json!({})).expect(200);
}

#[test]
fn rules_of_a_draft_are_held_to_its_weeks_and_places_to_its_rounds() {
    let stage = Stage::with(|season| {
        season["policy"]["rounds"] = json!({ "kind": "round_robin" });
        season["places"] = json!(8);
    });
    let version = stage
        .wennable
        .get(&stage.season)
        .header("etag")
        .unwrap()
        .to_owned();
    let change = |body: Value| {
        let dress = |request: RequestBuilder| request.header("if-match", &version).json(&body);
        stage.wennable.ask(Method::PATCH, &stage.season, dress)
    };
    let refused = change(json!({ "places": 10 })).refused(422, "validation");
    let expected = ("policy.round-robin", "/policy/rounds", json!(9), json!(8));
    assert_eq!(said(&refused), [expected]);
    let refused = change(json!({ "policy": { "scoring": {
        "games": { "kind": "win_draw_loss", "win": 3, "draw": 1, "loss": 0 },
        "concession": { "winner_at_least": 3, "loser_at_most": 0 },
        "no_show": { "present": 3, "absent_with_notice": 0, "absent_without_notice": 0 },
        "bye": { "kind": "win" }, "late_joiner": { "kind": "nothing" }, "best_weeks": 12
    } } }));
    let refused = refused.refused(422, "validation");
    let expected = (
        "policy.best-weeks",
        "/policy/scoring/best_weeks",
        json!(8),
        json!(12),
    );
    assert_eq!(said(&refused), [expected]);
}
