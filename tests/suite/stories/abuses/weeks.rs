//! A week that was announced.

use serde_json::{Value, json};
use tallyhost::demo::data;

use super::super::results::week::FirstWeek;
use super::told;
use crate::harness::Stage;

#[test]
fn an_announced_week_is_not_taken_back_to_change_the_cap_under_sealed_lists() {
    let played = FirstWeek::sealed(&["Oskrel", "Corvanel"]);
    let week = played.week();
    let before = week.times().with_status(200).json();
    let back = json!({ "announce": "2026-01-12T19:59:59" });
    week.update(&back).refused(409, "season-fixed");
    week.update(&json!({ "cap": 100 }))
        .refused(409, "season-fixed");
    assert_eq!(week.times().with_status(200).json(), before);

    let later = json!({ "lists_due": "2026-01-12T20:30:00" });
    week.update(&later).expect(204);
    assert_eq!(
        told(&played.stage, "update_week"),
        [json!({ "week": 1, "lists_due": "2026-01-12T19:30:00Z" })],
        "everybody reads what is another, and that alone"
    );
}

#[test]
fn the_end_of_play_does_not_come_sooner_once_the_games_are_known() {
    let played = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let week = played.week();
    let sooner = json!({ "play_until": "2026-01-14T20:00:00" });
    week.update(&sooner).refused(409, "week-state");
    let later = json!({ "play_until": "2026-01-25T20:00:00" });
    week.update(&later).expect(204);
}

#[test]
fn a_deadline_does_not_move_past_its_night_nor_a_night_before_its_deadline() {
    let night = |begins: &str| json!([{ "key": "first", "begins": begins, "tables": 6 }]);
    let draft = Stage::draft();
    let running = FirstWeek::sealed(&["Oskrel", "Corvanel"]);
    for week in [draft.week(1), running.week()] {
        let before = week.times().with_status(200).json();
        let at_its_night = json!({ "lists_due": "2026-01-13T19:00:00" });
        let refused = week.update(&at_its_night).refused(422, "validation");
        let [begins, deadline] = ["2026-01-13T19:00:00", "2026-01-12T20:00:00"].map(Value::from);
        let due = ("season.order", "/lists_due", begins.clone(), begins);
        assert_eq!(refused.said(), [due], "{refused}");

        let [tuesday, monday] = ["2026-01-13T19:00:00", "2026-01-12T19:00:00"].map(&night);
        let refused = week.update(&json!({ "nights": monday }));
        let refused = refused.refused(422, "validation");
        let early = json!("2026-01-12T19:00:00");
        let early = ("season.order", "/nights/0/begins", deadline, early);
        assert_eq!(refused.said(), [early], "{refused}");
        assert_eq!(week.times().with_status(200).json(), before);

        week.update(&json!({ "nights": tuesday })).expect(204);
        let both =
            json!({ "lists_due": "2026-01-13T20:00:00", "nights": night("2026-01-14T19:00:00") });
        week.update(&both).expect(204);
    }
}

#[test]
fn a_title_that_was_revealed_stays_and_everybody_is_told_that_the_rest_changed() {
    let stage = Stage::draft();
    let put = |sheet: &Value, title: Value| {
        let full = json!({ "kind": "lists_opened" });
        let scenario = json!({ "sheet": sheet, "title": title, "full": full });
        stage.week(1).set_scenario(&scenario)
    };
    let at_once = || json!({ "kind": "announcement" });
    let mut sheet = data::sheets().unwrap()[0].clone();
    put(&sheet, at_once()).expect(204);
    for handle in ["Oskrel", "Corvanel"] {
        stage.join(handle);
    }
    stage.start();
    put(&sheet, json!({ "kind": "lists_opened" })).refused(409, "season-fixed");
    put(&sheet, at_once()).expect(204);
    assert_eq!(told(&stage, "update_scenario"), [json!({ "week": 1 })]);
    *sheet.get_mut("title").unwrap() = json!("Another crossing");
    put(&sheet, at_once()).refused(409, "season-fixed");
}
