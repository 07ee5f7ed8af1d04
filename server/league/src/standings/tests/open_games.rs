//! What the open games can still change, against trying every result.

use proptest::prelude::*;
use proptest::sample::select;

use crate::ids::{GameId, PlayerId};
use crate::standings::{
    Fixture, ReachRefusal, SeasonFacts, Simulation, Standings, Supposition, SuppositionRefusal,
    forecast, reach, table, what_if,
};

use super::seasons::{plain_scoring, played, player, points, season, week};

fn open(facts: &SeasonFacts) -> Vec<GameId> {
    let open = facts
        .games
        .iter()
        .filter(|game| matches!(game.fixture, Fixture::Game { outcome: None, .. }));
    open.map(|game| game.game).collect()
}

/// Every table that some results of the open games give.
fn all_tables(facts: &SeasonFacts) -> Vec<Standings> {
    let mut ends = vec![Vec::new()];
    for game in open(facts) {
        let longer = ends.iter().flat_map(|end: &Vec<Supposition>| {
            [played(1, 0), played(0, 0), played(0, 1)].map(|outcome| {
                let mut longer = end.clone();
                longer.push(Supposition { game, outcome });
                longer
            })
        });
        ends = longer.collect();
    }
    let last = facts.games.iter().map(|game| game.week).max().unwrap();
    ends.iter()
        .map(|end| what_if(facts, end, last).unwrap())
        .collect()
}

/// Ranks by total with every tie won, and with every tie lost.
fn bounds(standings: &Standings, of: PlayerId) -> (u32, u32) {
    let own = standings.row_of(of).unwrap().total;
    let above = standings.rows.iter().filter(|row| row.total > own).count();
    let not_below = standings.rows.iter().filter(|row| row.total >= own).count();
    (
        u32::try_from(above).unwrap() + 1,
        u32::try_from(not_below).unwrap(),
    )
}

/// Six players, one week played and two weeks open.
fn two_rounds_open() -> impl Strategy<Value = SeasonFacts> {
    let rounds = Just([1_u128, 2, 3, 4, 5, 6]).prop_shuffle();
    let results = select(vec![(1, 0), (0, 0), (0, 1)]);
    let games = (
        prop::array::uniform3(rounds),
        prop::array::uniform3(results),
        0..2_u8,
    );
    games.prop_map(|(rounds, results, best)| {
        let mut scoring = plain_scoring();
        scoring.attendance = points(1);
        scoring.best_weeks = (best == 1).then_some(2);
        let mut facts = season(6, scoring);
        for (number, round) in (1..).zip(rounds) {
            for (pair, result) in round.chunks(2).zip(results) {
                let outcome = (number == 1).then(|| played(result.0, result.1));
                facts = facts.with_game(number, pair[0], pair[1], outcome);
            }
        }
        facts
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn reach_agrees_with_trying_every_result_of_two_open_rounds(facts in two_rounds_open()) {
        let tables = all_tables(&facts);
        for number in 1..=6 {
            let of = player(number);
            let found = reach(&facts, of, 2, week(3)).unwrap();
            let every = tables.iter().map(|table| bounds(table, of));
            let every: Vec<_> = every.collect();
            prop_assert_eq!(found.best, every.iter().map(|(best, _)| *best).min().unwrap());
            prop_assert_eq!(found.worst, every.iter().map(|(_, worst)| *worst).max().unwrap());
            let own = |table: &Standings| {
                let row = table.row_of(of).unwrap();
                let open = row.weeks.iter().filter(|total| total.week > week(1));
                open.map(|total| total.points.get() - 1).sum::<i32>()
            };
            let with_second = tables.iter().zip(&every).filter(|(_, (best, _))| *best <= 2);
            prop_assert_eq!(
                found.needed.map(|needed| needed.get()),
                with_second.map(|(table, _)| own(table)).min()
            );
            let spoiled = tables.iter().zip(&every).filter(|(_, (_, worst))| *worst > 2);
            let spoiled = spoiled.map(|(table, _)| own(table)).max();
            let enough = (0..=4).find(|points| spoiled.is_none_or(|spoiled| *points > spoiled));
            prop_assert_eq!(found.enough.map(|enough| enough.get()), enough);
        }
    }
}

#[test]
fn more_than_two_open_games_of_one_player_need_a_forecast() {
    let facts = (1..=3).fold(season(2, plain_scoring()), |facts, number| {
        facts.with_game(number, 1, 2, None)
    });
    let refusal = ReachRefusal::TooOpen {
        limit: 2,
        actual: 3,
    };
    assert_eq!(reach(&facts, player(1), 1, week(3)), Err(refusal));
    assert_eq!(
        reach(&facts, player(9), 1, week(3)),
        Err(ReachRefusal::NoRow)
    );
}

#[test]
fn only_open_games_can_be_supposed() {
    let facts = season(3, plain_scoring())
        .with_game(1, 1, 2, played(3, 1))
        .with_bye(1, 3)
        .with_game(2, 1, 3, None);
    let suppose = |at: usize| {
        let game = facts.games.get(at).unwrap().game;
        let outcome = played(0, 4);
        let supposed = [Supposition { game, outcome }];
        what_if(&facts, &supposed, week(2))
    };
    let refused = |at: usize| {
        suppose(at)
            .unwrap_err()
            .first()
            .map(SuppositionRefusal::code)
    };
    assert_eq!(refused(0), Some("what-if.not-open"));
    assert_eq!(refused(1), Some("what-if.no-such-game"));
    let supposed = suppose(2).unwrap();
    assert_eq!(supposed.rows.first().unwrap().player, player(3));
    assert_eq!(
        table(&facts, week(2)).row_of(player(3)).unwrap().total,
        points(2)
    );
}

/// Two players, one open game with three equally likely results: first alone or shared in two of
/// three. 10,000 runs stay within the stated error, and a seed repeats its answer.
#[test]
fn a_forecast_states_its_error_and_repeats_with_its_seed() {
    let facts = season(2, plain_scoring()).with_game(1, 1, 2, None);
    let simulation = Simulation {
        last: week(1),
        rounds_to_come: 0,
        seed: 7,
        runs: 10_000,
    };
    let forecasts = forecast(&facts, &simulation);
    let first = forecasts.first().unwrap().at_least(1).unwrap();
    assert!(first.low < 2.0 / 3.0 && 2.0 / 3.0 < first.high, "{first:?}");
    assert!(first.high - first.low < 0.02);
    assert_eq!(forecast(&facts, &simulation), forecasts);
}

#[test]
fn rounds_to_come_are_played_by_everyone_who_is_still_there() {
    let mut facts = season(4, plain_scoring()).with_game(1, 1, 2, played(1, 0));
    facts.players.last_mut().unwrap().left = Some(week(1));
    let simulation = Simulation {
        last: week(1),
        rounds_to_come: 3,
        seed: 1,
        runs: 200,
    };
    let forecasts = forecast(&facts, &simulation);
    let gone = forecasts.last().unwrap();
    assert_eq!(gone.ended.iter().sum::<u32>(), 200);
    assert_eq!(
        gone.at_least(1).unwrap().successes,
        0,
        "three rounds give somebody points"
    );
}
