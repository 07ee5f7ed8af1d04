//! The rules of the table, one test each.

use crate::ledger::{LineKind, LineReason};
use crate::points::LeaguePoints;
use crate::scoring::{Bye, LateJoiner, LateStep, ScoringTerms};
use crate::side::Side;
use crate::standings::{LateList, SeasonFacts, Standings, table};

use super::seasons::{no_show, plain_scoring, played, player, points, season, week};

fn total(standings: &Standings, number: u128) -> LeaguePoints {
    standings.row_of(player(number)).unwrap().total
}

fn sum_of(standings: &Standings, number: u128, kind: LineKind) -> LeaguePoints {
    standings.row_of(player(number)).unwrap().sums.sum_of(kind)
}

fn three_rounds(facts: SeasonFacts) -> SeasonFacts {
    facts
        .with_game(1, 1, 2, played(5, 3))
        .with_game(1, 3, 4, played(4, 4))
        .with_game(2, 1, 3, played(9, 2))
        .with_game(2, 2, 4, played(6, 1))
        .with_game(3, 4, 1, played(7, 0))
        .with_game(3, 2, 3, None)
}

#[test]
fn an_open_game_gives_nobody_anything() {
    let facts = three_rounds(season(4, plain_scoring()));
    let standings = table(&facts, week(3));
    let totals = [1, 2, 3, 4].map(|number| total(&standings, number).get());
    assert_eq!(totals, [4, 2, 1, 3]);
    assert_eq!(standings.lines_of(player(2)).count(), 2);
}

#[test]
fn whoever_comes_is_credited_and_whoever_stays_away_is_not() {
    let mut scoring = plain_scoring();
    scoring.attendance = points(1);
    let facts = season(2, scoring).with_game(1, 1, 2, no_show(Side::Second));
    let standings = table(&facts, week(1));
    assert_eq!(total(&standings, 1), points(3));
    assert_eq!(total(&standings, 2), points(0));
    let reasons: Vec<_> = standings
        .ledger
        .iter()
        .map(|line| line.reason.clone())
        .collect();
    let expected = [
        LineReason::OpponentAbsent,
        LineReason::Attended,
        LineReason::AbsentWithoutNotice,
    ];
    assert_eq!(reasons, expected);
    let [game, attended, _] = standings.ledger.as_slice() else {
        panic!("three lines");
    };
    assert_eq!(attended.source, game.source, "the game behind it");
}

#[test]
fn the_table_as_of_a_week_knows_nothing_of_later_weeks_and_shows_movement() {
    let facts = three_rounds(season(4, plain_scoring()));
    let second = table(&facts, week(2));
    assert_eq!(total(&second, 4), points(1));
    let third = table(&facts, week(3));
    let climber = third.row_of(player(4)).unwrap();
    assert_eq!((climber.rank, climber.movement), (2, Some(1)));
    assert_eq!(table(&facts, week(1)).rows.first().unwrap().movement, None);
}

#[test]
fn equal_after_all_shares_the_rank_and_the_next_stays_empty() {
    let facts = season(3, plain_scoring())
        .with_game(1, 1, 2, played(1, 1))
        .with_bye(1, 3);
    let rows = table(&facts, week(1)).rows;
    let ranks: Vec<_> = rows.iter().map(|row| (row.rank, row.shared)).collect();
    assert_eq!(ranks, [(1, false), (2, true), (2, true)]);
}

#[test]
fn the_worst_weeks_are_dropped_by_a_line_of_their_own() {
    let mut scoring = plain_scoring();
    scoring.best_weeks = Some(2);
    let standings = table(&three_rounds(season(4, scoring)), week(3));
    assert_eq!(total(&standings, 4), points(3), "1 + 0 + 2 without the 0");
    assert_eq!(total(&standings, 1), points(4), "2 + 2 + 0 without the 0");
    let dropped = |number| {
        let row = standings.row_of(player(number)).unwrap();
        row.weeks
            .iter()
            .filter(|week| !week.counts)
            .map(|week| week.week)
            .collect::<Vec<_>>()
    };
    assert_eq!(dropped(4), [week(2)]);
    assert_eq!(dropped(1), [week(3)]);
    assert_eq!(sum_of(&standings, 4, LineKind::DroppedWeek), points(0));
}

#[test]
fn a_late_joiner_gets_the_lower_median_of_missed_weeks_less_one_each() {
    let mut scoring = plain_scoring();
    scoring.late_joiner = LateJoiner::MedianLess(points(1));
    let mut facts = three_rounds(season(5, scoring));
    facts.players.last_mut().unwrap().joined = week(3);
    let standings = table(&facts, week(3));
    let lines: Vec<_> = standings.lines_of(player(5)).collect();
    let amounts: Vec<_> = lines
        .iter()
        .map(|line| (line.week, line.amount.get()))
        .collect();
    // Week 1 gave 2, 0, 1, 1; week 2 gave 2, 2, 0, 0.
    assert_eq!(amounts, [(week(1), 0), (week(2), 0)]);
    assert!(table(&facts, week(2)).row_of(player(5)).is_none());
}

#[test]
fn a_bye_by_own_average_rounds_down_and_never_falls_below_the_floor() {
    let mut scoring = plain_scoring();
    scoring.bye = Bye::OwnAverage { floor: points(1) };
    let facts = three_rounds(season(5, scoring))
        .with_bye(3, 3)
        .with_bye(1, 5);
    let standings = table(&facts, week(3));
    assert_eq!(
        sum_of(&standings, 3, LineKind::Bye),
        points(1),
        "floor above (1 + 0) / 2"
    );
    assert_eq!(sum_of(&standings, 5, LineKind::Bye), points(1));
}

#[test]
fn a_list_at_the_end_of_the_grace_is_late_and_one_second_before_is_not() {
    let mut scoring = plain_scoring();
    let step = |from_minutes, penalty| LateStep {
        from_minutes,
        penalty: points(penalty),
    };
    scoring.late_list = vec![step(60, 1), step(25 * 60, 2)];
    let late = |seconds| {
        let mut facts = season(2, scoring.clone()).with_game(1, 1, 2, played(2, 1));
        facts.late_lists.push(LateList {
            player: player(1),
            week: week(1),
            seconds,
        });
        total(&table(&facts, week(1)), 1)
    };
    assert_eq!(late(59 * 60 + 59), points(2));
    assert_eq!(late(60 * 60), points(1));
    assert_eq!(late(25 * 3600), points(0));
}

fn third_player_is_away(scoring: ScoringTerms) -> SeasonFacts {
    season(3, scoring)
        .with_game(2, 1, 2, played(5, 3))
        .with_absence(2, 3)
}

#[test]
fn a_week_away_with_notice_is_worth_a_game_missed_with_notice() {
    let mut scoring = plain_scoring();
    scoring.no_show.absent_with_notice = points(1);
    scoring.attendance = points(1);
    scoring.weights.insert(week(2), 3);
    let facts = third_player_is_away(scoring);
    let standings = table(&facts, week(2));
    let lines: Vec<_> = standings.lines_of(player(3)).collect();
    let [line] = lines.as_slice() else {
        panic!("{lines:?}")
    };
    assert_eq!(
        (line.kind, &line.reason, line.amount),
        (LineKind::Absence, &LineReason::AbsentWithNotice, points(3))
    );
    assert_eq!(total(&table(&facts, week(1)), 3), points(0));
}

#[test]
fn a_week_away_with_notice_is_one_unplayed_round() {
    let told = table(&third_player_is_away(plain_scoring()), week(2));
    assert_eq!(told.row_of(player(3)).unwrap().record.unplayed, 1);
    let mut facts = third_player_is_away(plain_scoring());
    facts.absences.clear();
    let untold = table(&facts, week(2));
    let record = |standings: &Standings| standings.row_of(player(3)).unwrap().record;
    assert_eq!(record(&told), record(&untold));
}
