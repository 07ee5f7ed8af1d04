//! A week away.

use serde_json::json;

use super::week::FirstWeek;

#[test]
fn who_says_in_time_that_no_night_is_possible_is_not_paired_and_gets_what_the_season_says() {
    let week = FirstWeek::sealed(&["Oskrel", "Corvanel", "Pellamoor"]);
    let away = &week.players[2];
    week.tell(away, &[]).expect(204);
    let round = week.propose();
    assert!(
        week.lines(away).is_empty(),
        "nothing before the round is out"
    );
    week.publish(&round);
    let games = week.games();
    assert_eq!(games.len(), 1, "{games:?}");
    assert!(!games[0].is_of(&away.id), "{games:?}");

    assert_eq!(week.lines(away), [("absence".to_owned(), 2)]);
    let reason = &week.ledger(away).lines[0].reason;
    assert_eq!(reason, &json!({ "kind": "absent_with_notice" }));
    week.tell(away, &["first"]).refused(409, "week-state");
    week.tell(&week.players[0], &[]).refused(409, "week-state");
}

#[test]
fn who_speaks_after_the_round_was_drawn_is_in_a_game_whose_slip_decides() {
    let week = FirstWeek::sealed(&["Oskrel", "Corvanel"]);
    let round = week.propose();
    week.tell(&week.players[0], &[]).expect(204);
    week.publish(&round);
    assert!(week.lines(&week.players[0]).is_empty());
}
