//! Before anything is said: the sum as it is typed, and what may still become of the table.

use serde_json::json;

use super::week::{FirstWeek, played};
use crate::harness::{Stage, no_show};

const FOUR: [&str; 4] = ["Oskrel", "Corvanel", "Pellamoor", "Lumeth"];

#[test]
fn the_sum_is_shown_as_it_is_typed_and_nothing_is_saved() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let [first, _] = week.sides();
    let game = week.game().by(first);
    let possible = game.preview(&played((4, 144), (2, 108))).expect(200);
    assert_eq!(possible.kind, "possible");
    assert_eq!(
        possible.outcome.unwrap().pointer("/score/total"),
        Some(&json!({ "first": 12, "second": 7 }))
    );
    assert_eq!(
        possible.league_points,
        Some(json!({ "first": 7, "second": 3 }))
    );

    let impossible = game.preview(&played((4, 301), (3, 0))).expect(200);
    let limits: Vec<_> = impossible
        .impossible
        .iter()
        .map(|found| (found.limit, found.actual))
        .collect();
    assert_eq!(limits, [(Some(300), Some(301)), (Some(6), Some(7))]);
    let no_counts = json!({ "kind": "played", "counts": { "legs": 3 } });
    game.preview(&no_counts).refused(422, "validation");
    assert_eq!(week.games()[0].slip().kind, "awaited");
    assert_eq!(week.acts()[0], "publish_round");
}

#[test]
fn open_games_are_supposed_and_others_are_not() {
    let week = FirstWeek::paired(&FOUR);
    let [first, second] = week.sides();
    let game = week.game();
    let suppose = |game: &str| {
        let score =
            json!({ "legs": [], "total": { "first": 3, "second": 18 }, "verdict": "second" });
        let outcome = json!({ "kind": "played", "score": score });
        week.season().what_if(game, &outcome)
    };
    let table = suppose(game.id()).expect(200);
    let leader = &table.rows[0];
    assert_eq!((&leader.player, leader.total), (&second.id, 10));
    assert!(week.lines(second).is_empty(), "nothing is saved");

    week.report(first, "one", &played((4, 144), (2, 108)))
        .expect(200);
    game.by(second).confirm().expect(200);
    for (game, code) in [
        (game.id(), "what-if.not-open"),
        (first.id.as_str(), "what-if.no-such-game"),
    ] {
        let problem = suppose(game).refused(422, "validation");
        let fault = &problem.faults[0];
        assert_eq!(
            (fault.code.as_str(), fault.pointer.as_str()),
            (code, "/suppositions/0/game")
        );
    }
}

#[test]
fn a_forecast_repeats_with_its_seed_and_says_its_error() {
    let week = FirstWeek::paired(&FOUR);
    week.stage.until_reveals_are_published();
    let forecast_with = |seed| week.season().forecast(seed, 400).expect(200);
    let forecast = forecast_with(7);
    assert_eq!(forecast, forecast_with(7));
    assert_ne!(forecast.players, forecast_with(8).players);
    assert_eq!((forecast.as_of, forecast.rounds_to_come), (1, 7));
    for player in &forecast.players {
        assert_eq!(player.ended.iter().sum::<u64>(), 400);
        let at_rank = &player.at_rank;
        assert_eq!(at_rank.trials, 400);
        let share = at_rank.successes as f64 / 400.0;
        assert!(at_rank.low < share, "{player:?}");
        assert!(share < at_rank.high, "{player:?}");
    }
    let refused = week.season().reach(&week.players[0].id, "");
    let refused = refused.refused(409, "too-open");
    assert_eq!(refused.member("rounds_to_come"), 7);
}

#[test]
fn a_share_is_said_only_of_enough_games_and_games_are_counted_from_the_first() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let [first, second] = week.sides();
    week.report(first, "one", &played((4, 144), (2, 108)))
        .expect(200);
    week.game().by(second).confirm().expect(200);
    let found = week.season().statistics().expect(200);
    assert_eq!(found.fewest_games, 10);
    let scenario = &found.scenarios[0];
    assert_eq!(
        (scenario.key.as_str(), scenario.won, scenario.too_few),
        ("Toll at the Ford", 1, true)
    );
    assert!(scenario.win_share.is_none());
    assert_eq!(found.factions.len(), 2);
    assert!(
        found.roles.is_empty(),
        "the ford is the same for both sides"
    );
    let met = found.met.iter().find(|met| met.player == first.id);
    assert_eq!(met.unwrap().opponents, [second.id.as_str()]);

    let awards = week.season().awards().expect(200);
    assert!(!awards.is_final);
    let mut prizes = awards.awards.iter();
    let most_games = prizes.find(|award| award.prize == "most_games");
    assert_eq!(most_games.unwrap().holders.len(), 2);
}

#[test]
fn the_report_on_the_hall_counts_who_came_and_names_nobody() {
    let week = FirstWeek::paired(&["Oskrel", "Corvanel"]);
    let counted = || {
        let found = week.season().attendance().expect(200);
        let first = &found.weeks[0];
        let all = [
            first.players,
            first.came,
            first.no_shows,
            first.open,
            first.byes,
            first.away,
        ];
        ((found.as_of, found.weeks.len(), first.week), all)
    };
    assert_eq!(counted(), ((1, 1, 1), [2, 0, 0, 2, 0, 0]));
    let ruling = week.game().rule(&no_show("first"), "Nobody came");
    ruling.expect(200);
    assert_eq!(counted().1, [2, 1, 1, 0, 0, 0]);
    let text = week.season().attendance().with_status(200).text();
    for side in week.sides() {
        assert!(!text.contains(&side.id), "{text}");
    }
}

#[test]
fn the_report_on_the_hall_is_empty_until_a_week_is_paired() {
    let stage = Stage::with(|season| season.caps(&[300]));
    let week = FirstWeek::sealed_in(stage, &FOUR);
    assert!(week.season().attendance().expect(200).weeks.is_empty());
    week.pair();
    assert_eq!(week.season().attendance().expect(200).weeks.len(), 1);
}

#[test]
fn what_a_rank_takes_is_exact_once_the_last_round_is_paired() {
    let stage = Stage::with(|season| season.caps(&[300]));
    let week = FirstWeek::sealed_in(stage, &FOUR);
    week.pair();
    let [first, second] = week.sides();
    let reach = || week.season().reach(&first.id, "?rank=1").expect(200);
    let open = reach();
    assert_eq!((open.best, open.worst), (1, 4));
    assert_eq!((open.needed, open.enough), (Some(5), None));

    let ruling = week.game().rule(&no_show("first"), "Nobody came");
    ruling.expect(200);
    let lost = reach();
    assert_eq!((lost.best, lost.needed), (4, None));
    assert!(week.lines(second).contains(&("game".to_owned(), 7)));
}
