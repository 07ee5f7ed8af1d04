//! Seasons that cannot be played as they are written.

use serde_json::json;

use super::Started;
use crate::harness::{Said, SeasonBody, Stage};

#[test]
fn a_season_that_cannot_be_played_as_it_is_written_is_not_set_up() {
    let started = Started::start();
    let cases: [(&str, SeasonBody, Said<'_>); 7] = [
        (
            "a rule for week 9 of 8",
            started.season(|body| {
                let rule = json!({ "rule": { "kind": "faction_lock" }, "weeks": [8, 9] });
                body.list_rules(json!([rule]));
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
            started.season(|body| body.set("/policy/scoring/weights", json!({ "9": 2 }))),
            (
                "policy.weeks",
                "/policy/scoring/weights/9",
                json!(8),
                json!(9),
            ),
        ),
        (
            "the best nine weeks",
            started.season(|body| body.set("/policy/scoring/best_weeks", 9)),
            (
                "policy.best-weeks",
                "/policy/scoring/best_weeks",
                json!(8),
                json!(9),
            ),
        ),
        (
            "three rounds on two nights",
            started.season(|body| {
                body.rounds(json!({ "kind": "by_score", "per_week": 3 }));
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
            started.season(|body| {
                body.rounds(json!({ "kind": "round_robin", "per_week": 2 }));
            }),
            ("policy.round-robin", "/policy/rounds", json!(19), json!(16)),
        ),
        (
            "a first day of 1999",
            started.season(|body| body.set("/calendar/first_day", "1999-01-07")),
            (
                "season.first-day",
                "/calendar/first_day",
                json!("2025-01-07"),
                json!("1999-01-07"),
            ),
        ),
        (
            "a first day of 2030",
            started.season(|body| body.set("/calendar/first_day", "2030-01-03")),
            (
                "season.first-day",
                "/calendar/first_day",
                json!("2028-01-09"),
                json!("2030-01-03"),
            ),
        ),
    ];
    for (name, body, expected) in cases {
        let problem = started.nothing_written(name, || {
            let created = started.stage.club.create_season(&body);
            created.refused(422, "validation")
        });
        assert_eq!(problem.said(), [expected], "{name}: {problem}");
    }
}

#[test]
fn a_season_does_not_start_without_two_who_play() {
    let stage = Stage::draft();
    let [oskrel, _] = ["Oskrel", "Corvanel"].map(|handle| stage.join(handle));
    let place = stage.season.player(&oskrel.id).by(&oskrel);
    place.withdraw().expect(200);
    let refused = stage.season.start().refused(409, "not-enough-players");
    assert_eq!((refused.limit(), refused.actual()), (&json!(2), &json!(1)));
    stage.join("Pellamoor");
    stage.season.start().expect(200);
}

#[test]
fn rules_of_a_draft_are_held_to_its_weeks_and_places_to_its_rounds() {
    let stage = Stage::with(|season| {
        season.rounds(json!({ "kind": "round_robin" }));
        season.set("/places", 8);
    });
    let refused = stage.season.update(&json!({ "places": 10 }));
    let refused = refused.refused(422, "validation");
    let expected = ("policy.round-robin", "/policy/rounds", json!(9), json!(8));
    assert_eq!(refused.said(), [expected]);
    let refused = stage.season.update(&json!({ "policy": { "scoring": {
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
    assert_eq!(refused.said(), [expected]);
}
