//! Statistics, history and prizes, on one small season.

use crate::ledger::LineSource;
use crate::painting::PaintedWeek;
use crate::points::Points;
use crate::share::Share;
use crate::standings::{
    Exact, Prize, SeasonFacts, SideResult, awards, kendall_tau_b, list_side_games, rank_history,
    tally,
};

use super::seasons::{plain_scoring, played, player, season, week};

fn small_season() -> SeasonFacts {
    let mut facts = season(4, plain_scoring())
        .with_game(1, 1, 2, played(5, 3))
        .with_game(1, 3, 4, played(9, 4))
        .with_game(2, 1, 4, played(2, 8))
        .with_game(2, 2, 3, played(6, 6))
        .with_game(3, 4, 2, played(7, 1))
        .with_bye(3, 3);
    facts.painted.push(PaintedWeek {
        player: player(2),
        week: week(2),
        share: Share::percent(60),
        new_units: 1,
        new_points: Points::new(95),
        source: LineSource::Rule,
        version: 1,
    });
    facts
}

#[test]
fn every_played_game_is_seen_from_both_sides() {
    let seen = list_side_games(&small_season(), week(3));
    assert_eq!(seen.len(), 10);
    assert_eq!(seen.iter().map(|game| game.margin).sum::<i64>(), 0);
    let of_2 = seen.iter().filter(|game| game.player == player(2));
    let met: Vec<_> = of_2.map(|game| (game.opponent, game.ending)).collect();
    let expected = [
        (player(1), SideResult::Lost),
        (player(3), SideResult::Drawn),
        (player(4), SideResult::Lost),
    ];
    assert_eq!(met, expected);
}

#[test]
fn shares_are_given_from_the_fewest_games_on() {
    let seen = list_side_games(&small_season(), week(3));
    let tallies = tally(&seen, 3, |game| Some(game.player));
    let with_share: Vec<_> = tallies
        .iter()
        .map(|tally| tally.win_share.is_some())
        .collect();
    assert_eq!(with_share, [false, true, false, true]);
    let last = tallies.last().unwrap();
    assert_eq!((last.won, last.drawn, last.lost), (2, 0, 1));
    assert_eq!(last.mean_margin, Some(Exact::new(7, 3)));
}

#[test]
fn ranks_over_the_weeks_are_those_of_each_weeks_table() {
    let histories = rank_history(&small_season(), week(3));
    let of_4 = histories
        .iter()
        .find(|history| history.player == player(4))
        .unwrap();
    assert_eq!(of_4.ranks, [Some(3), Some(2), Some(2)]);
}

#[test]
fn prizes_follow_from_the_data_and_are_shared_by_equals() {
    let given = awards(&small_season(), week(3));
    let found: Vec<_> = given
        .iter()
        .map(|given| (given.prize, given.holders.clone(), given.value))
        .collect();
    let expected = [
        (
            Prize::PaintedProgress,
            vec![player(2)],
            Exact::from_integer(95),
        ),
        (
            Prize::MostGames,
            vec![player(4), player(2)],
            Exact::from_integer(3),
        ),
        (Prize::ToughestSchedule, vec![player(2)], Exact::new(11, 3)),
        (Prize::BiggestClimb, vec![player(4)], Exact::from_integer(1)),
    ];
    assert_eq!(found, expected);
}

#[test]
fn the_same_order_agrees_fully_and_the_reverse_not_at_all() {
    assert_eq!(kendall_tau_b(&[(1, 1), (2, 2), (3, 3)]), Some(1.0));
    assert_eq!(kendall_tau_b(&[(1, 3), (2, 2), (3, 1)]), Some(-1.0));
}
