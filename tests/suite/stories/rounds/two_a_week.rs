use std::collections::BTreeSet;

use serde_json::{Value, json};

use super::{PEOPLE, ShortSeason, meetings};
use crate::harness::{Game, Repair, Stage};

fn by_score(per_week: u8) -> Value {
    json!({ "kind": "by_score", "per_week": per_week })
}

/// A player falls ill before the first round of the week is played.
fn without(player: &str) -> Repair {
    Repair::because("One player less on that night").without(player)
}

#[test]
fn a_second_round_in_a_week_pairs_everybody_anew_on_another_night() {
    let season = ShortSeason::begin(2, by_score(2), &PEOPLE);
    season.open(1);
    let first = season.pair(1);
    let second = season.propose(1).expect(201);
    assert_eq!(second.number, 2);
    assert_eq!(second.inputs.rounds_left, 2, "both of week 2");
    let history = &second.inputs.history;
    assert_eq!(history.len(), 3, "the first round counts as met");
    let second = season.publish(&second);
    assert_eq!((meetings(&first).len(), meetings(&second).len()), (3, 3));
    let games = [meetings(&first), meetings(&second)].concat();
    let pairs: BTreeSet<_> = games.iter().map(|game| game.pair()).collect();
    assert_eq!(pairs.len(), 6, "nobody meets again");
    let nights: BTreeSet<(String, String)> = games
        .iter()
        .flat_map(|game| {
            let night = game.night.clone().unwrap();
            game.pair().map(|player| (player, night.clone()))
        })
        .collect();
    assert_eq!(nights.len(), 12, "nobody plays twice on one night");
    season.propose(1).refused(409, "round-already-paired");

    season.open(2);
    let third = meetings(&season.pair(2)).len();
    let fourth = meetings(&season.pair(2)).len();
    assert_eq!((third, fourth), (3, 3));
    for week in 1..=2 {
        season.rule_out(week);
    }
    season.end();
}

#[test]
fn a_game_of_the_first_round_is_repaired_around_the_second() {
    let season = ShortSeason::begin(1, by_score(2), &PEOPLE);
    season.open(1);
    let round = season.propose(1).expect(201);
    let first = season.publish(&round);
    season.pair(1);
    let ill = &first[0].first;
    let repair = season.season().round(&round.id).repair(&without(ill));
    season.publish(&repair.expect(201));
    let games = season.seen().games_of(1).expect(200);
    let place = |game: &&Game| (game.night.clone().unwrap(), game.table.unwrap());
    let places: Vec<_> = meetings(&games).iter().map(place).collect();
    let distinct: BTreeSet<_> = places.iter().collect();
    assert_eq!(
        distinct.len(),
        places.len(),
        "no table holds two games: {places:?}"
    );
    let of_ill = games.iter().filter(|game| game.is_of(ill)).count();
    assert_eq!(of_ill, 1, "the game of the second round stays");
}

#[test]
fn a_week_has_a_number_of_rounds_that_it_can_have() {
    let stage = Stage::draft();
    for per_week in [0, 8] {
        let mut season = stage.season_body();
        season.rounds(by_score(per_week));
        let problem = stage.club.create_season(&season).refused(422, "validation");
        assert_eq!(problem.faults[0].pointer, "/policy/rounds/per_week");
        assert_eq!(problem.faults[0].limit, 7);
    }
}

#[test]
fn who_withdraws_or_does_not_come_in_the_second_half_of_a_week_is_not_in_its_second_round() {
    let season = ShortSeason::begin(1, by_score(2), &PEOPLE);
    season.open(1);
    season.pair(1);
    let gone = &season.players[0];
    let place = season.season().player(&gone.id).by(gone);
    place.withdraw().expect(200);
    let second = season.pair(1);
    assert!(
        !second.iter().any(|game| game.is_of(&gone.id)),
        "{second:?}"
    );
    assert_eq!(
        (meetings(&second).len(), second.len()),
        (2, 3),
        "five are left, one sits out"
    );
}

#[test]
fn a_second_round_that_was_proposed_before_the_first_was_repaired_is_proposed_anew() {
    let season = ShortSeason::begin(1, by_score(2), &PEOPLE);
    season.open(1);
    let round = season.propose(1).expect(201);
    let first = season.publish(&round);
    let second = season.propose(1).expect(201);
    season.show(&season.times(1).play_until_at);
    let ill = without(&first[0].first);
    let repair = season.season().round(&round.id).repair(&ill).expect(201);
    season.publish(&repair);
    let stale = season.season().round(&second.id);
    stale.publish().refused(409, "week-state");
    season.pair(1);
}

/// FIDE Handbook C.04.1, article 1: the number of rounds is declared beforehand.
#[test]
fn the_number_of_rounds_is_fixed_once_the_season_has_started() {
    let season = ShortSeason::begin(1, by_score(1), &PEOPLE[..2]);
    let mut policy = season.season().state().expect(200).policy;
    *policy.get_mut("rounds").unwrap() = by_score(2);
    season
        .season()
        .update(&json!({ "policy": policy }))
        .refused(409, "season-fixed");
}
