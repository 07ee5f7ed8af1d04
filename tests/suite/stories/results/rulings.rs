//! A ruling after the week is closed: a new version, traced, that changes nothing else.

use serde_json::json;

use super::week::{FirstWeek, played};
use crate::harness::{Player, void};

const FOUR: [&str; 4] = ["Oskrel", "Corvanel", "Pellamoor", "Lumeth"];

#[test]
fn a_late_ruling_makes_a_new_version_that_ledger_and_trail_show_and_changes_nothing_else() {
    let week = FirstWeek::paired(&FOUR);
    for game in week.games() {
        let game = week.season().game(&game.id);
        let slip = game.rule(&played((4, 144), (2, 108)), "Both signed the sheet");
        assert_eq!(slip.expect(200).kind, "ruled");
    }
    week.week().close().expect(204);
    let closed = week.season().standings_after(1).expect(200);
    let [first, second] = week.sides();
    assert_eq!(game_line(&week, first), (7, 1));

    let game = week.game();
    game.rule(&played((4, 144), (4, 72)), "Eight turns")
        .refused(422, "impossible-score");
    let reason = "A photo shows the fourth turn";
    let slip = game.rule(&played((3, 144), (3, 108)), reason).expect(200);

    assert_eq!(
        (game_line(&week, first), game_line(&week, second)),
        ((5, 2), (5, 2))
    );
    let ruling = slip.ruling.unwrap();
    assert_eq!(
        week.ledger(first).lines[0].source,
        json!({ "kind": "ruling", "id": ruling.id })
    );
    let again = week.season().standings_after(1).expect(200);
    assert!(again.version > closed.version);
    for row in &closed.rows {
        let change = again.row_of(&row.player).total - row.total;
        let expected = match &row.player {
            id if *id == first.id => -2,
            id if *id == second.id => 2,
            _ => 0,
        };
        assert_eq!(change, expected, "{row:?}");
    }
    let trail = week.season().trail().expect(200);
    let rulings = trail
        .iter()
        .filter(|entry| entry.act == "rule_result" && entry.fact("game") == game.id());
    let versions: Vec<_> = rulings.map(|entry| entry.fact("version")).collect();
    assert_eq!(versions, [2, 1]);
    assert_eq!(
        week.acts()[1],
        "close_week",
        "what stood stays in the trail"
    );
}

/// Amount and version of the line of a player's game.
fn game_line(week: &FirstWeek, player: &Player) -> (i64, i64) {
    let line = &week.ledger(player).lines[0];
    assert_eq!(line.kind, "game");
    (line.amount, line.version)
}

#[test]
fn a_referee_cannot_ask_for_a_scenario_that_is_still_hidden_by_ruling_on_it() {
    let week = FirstWeek::paired(&FOUR);
    let hidden =
        "UPDATE weeks SET full_reveal = 'at', full_reveal_at = '2026-02-01' WHERE week_no = 1";
    week.stage.database.run(hidden);
    let game = week.game().by(week.stage.appoint("Ilkamar", "referee"));
    let guess = json!({ "legs": [{ "first": { "items": {} }, "second": { "items": {} } }] });
    for outcome in [
        json!({ "kind": "played", "counts": guess }),
        played((4, 144), (2, 108)),
    ] {
        let refused = game.rule(&outcome, "What is counted?");
        let refused = refused.refused(409, "week-state");
        assert!(refused.member("errors").is_null(), "{refused}");
    }
    let [first, _] = week.sides();
    week.report(first, "early", &played((4, 144), (2, 108)))
        .refused(409, "week-state");
    game.rule(&void(), "The hall is closed").expect(200);
}
