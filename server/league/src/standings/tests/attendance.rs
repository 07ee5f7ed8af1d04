//! Attendance, on weeks small enough to be counted by hand.

use crate::result::Outcome;
use crate::side::{PerSide, Side};
use crate::standings::{Absence, Fixture, SeasonFacts, WeekAttendance, attendance};

use super::seasons::{no_show, plain_scoring, played, player, season, week};

fn open_game(first: u128, second: u128) -> Fixture {
    Fixture::Game {
        players: PerSide::new(player(first), player(second)),
        harder: None,
        outcome: None,
        ruling: None,
    }
}

fn of_week(facts: &SeasonFacts, number: u8) -> [usize; 6] {
    let weeks = attendance(facts, week(number));
    let WeekAttendance {
        players,
        came,
        no_shows,
        open,
        byes,
        away,
        ..
    } = *weeks.last().unwrap();
    [players, came, no_shows, open, byes, away]
}

#[test]
fn everybody_came_stayed_away_with_or_without_a_word_had_a_bye_or_is_not_settled() {
    let mut facts = season(8, plain_scoring())
        .with_game(1, 1, 2, played(5, 3))
        .with_game(1, 3, 4, no_show(Side::Second))
        .with_fixture(1, open_game(5, 6))
        .with_bye(1, 7);
    facts.absences = vec![Absence {
        player: player(8),
        week: week(1),
    }];
    assert_eq!(of_week(&facts, 1), [8, 3, 1, 2, 1, 1]);
    assert_eq!(of_week(&facts, 2), [8, 0, 0, 0, 0, 0], "not played yet");
}

#[test]
fn who_came_to_one_of_several_rounds_came() {
    let facts = season(3, plain_scoring())
        .with_game(1, 1, 2, no_show(Side::First))
        .with_game(1, 1, 3, played(5, 3))
        .with_bye(1, 2);
    assert_eq!(of_week(&facts, 1), [3, 3, 0, 0, 0, 0]);
}

#[test]
fn where_both_lose_nobody_came_and_a_struck_game_says_nothing() {
    let facts = season(4, plain_scoring())
        .with_game(1, 1, 2, Outcome::DoubleLoss)
        .with_game(1, 3, 4, Outcome::Void);
    assert_eq!(of_week(&facts, 1), [4, 0, 2, 0, 0, 0]);
}
