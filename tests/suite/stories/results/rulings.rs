//! A ruling after the week is closed: a new version, traced, that changes nothing else.

use serde_json::{Value, json};

use super::week::{Week, played};

const FOUR: [&str; 4] = ["Oskrel", "Corvanel", "Pellamoor", "Lumeth"];

#[test]
fn a_late_ruling_makes_a_new_version_that_ledger_and_trail_show_and_changes_nothing_else() {
    let week = Week::paired(&FOUR);
    for game in week.get("games").as_array().unwrap() {
        let rule = format!("games/{}/rule", game["id"].as_str().unwrap());
        let outcome = played((4, 144), (2, 108));
        let body = json!({ "outcome": outcome, "reason": "Both signed the sheet" });
        let referee = week.act(&rule, &body).expect(200);
        assert_eq!(referee["kind"], "ruled");
    }
    week.act("weeks/1/close", &json!({})).expect(204);
    let closed = week.get("standings?week=1");
    let [first, second] = week.sides();
    assert_eq!(game_line(&week, first), (7, 1));

    let outcome = played((4, 144), (4, 72));
    let impossible = json!({ "outcome": outcome, "reason": "Eight turns" });
    let rule = format!("{}/rule", week.game());
    let wennable = &week.stage.wennable;
    wennable
        .post(&rule, &impossible)
        .refused(422, "impossible-score");
    let outcome = played((3, 144), (3, 108));
    let body = json!({ "outcome": outcome, "reason": "A photo shows the fourth turn" });
    let ruling = wennable.post(&rule, &body).expect(200);

    assert_eq!(
        (game_line(&week, first), game_line(&week, second)),
        ((5, 2), (5, 2))
    );
    let line = &week.ledger(first)[0];
    assert_eq!(
        line["source"],
        json!({ "kind": "ruling", "id": ruling["ruling"]["id"] })
    );
    let again = week.get("standings?week=1");
    assert!(again["version"].as_i64() > closed["version"].as_i64());
    for row in closed["rows"].as_array().unwrap() {
        let now = row_of(&again, &row["player"]);
        let change = now["total"].as_i64().unwrap() - row["total"].as_i64().unwrap();
        let expected = match row["player"].as_str() {
            Some(id) if id == first.id => -2,
            Some(id) if id == second.id => 2,
            _ => 0,
        };
        assert_eq!(change, expected, "{row}");
    }
    let trail = week.get("trail");
    let rulings = trail.as_array().unwrap().iter().filter(|entry| {
        entry["act"] == "rule_result"
            && week
                .game()
                .ends_with(entry["facts"]["game"].as_str().unwrap())
    });
    let versions: Vec<_> = rulings
        .map(|entry| entry["facts"]["version"].clone())
        .collect();
    assert_eq!(versions, [2, 1]);
    assert_eq!(
        week.acts()[1],
        "close_week",
        "what stood stays in the trail"
    );
}

/// Amount and version of the line of a player's game.
fn game_line(week: &Week, player: &crate::harness::Player) -> (i64, i64) {
    let line = &week.ledger(player)[0];
    assert_eq!(line["kind"], "game");
    (
        line["amount"].as_i64().unwrap(),
        line["version"].as_i64().unwrap(),
    )
}

fn row_of(table: &Value, player: &Value) -> Value {
    let mut rows = table["rows"].as_array().unwrap().iter();
    rows.find(|row| &row["player"] == player).unwrap().clone()
}

#[test]
fn a_referee_cannot_ask_for_a_scenario_that_is_still_hidden_by_ruling_on_it() {
    let week = Week::paired(&FOUR);
    let hidden =
        "UPDATE weeks SET full_reveal = 'at', full_reveal_at = '2026-02-01' WHERE week_no = 1";
    week.stage.database.run(hidden);
    let referee = week.stage.appoint("Ilkamar", "referee");
    let rule = format!("{}/rule", week.game());
    let guess = json!({ "legs": [{ "first": { "items": {} }, "second": { "items": {} } }] });
    for outcome in [
        json!({ "kind": "played", "counts": guess }),
        played((4, 144), (2, 108)),
    ] {
        let body = json!({ "outcome": outcome, "reason": "What is counted?" });
        let refused = referee.post(&rule, &body).refused(409, "week-state");
        assert!(refused.get("errors").is_none(), "{refused}");
    }
    let [first, _] = week.sides();
    week.report(first, "early", &played((4, 144), (2, 108)))
        .refused(409, "week-state");
    let body = json!({ "outcome": { "kind": "void" }, "reason": "The hall is closed" });
    referee.post(&rule, &body).expect(200);
}
