use std::collections::{BTreeMap, BTreeSet};

use serde_json::{Value, json};

use super::super::season::offline::verify;
use super::{PEOPLE, ShortSeason, meetings, short};
use crate::harness::{Game, Repair, Stage};

fn round_robin() -> Value {
    json!({ "kind": "round_robin" })
}

/// Who has each seat of the table.
fn seats(season: &ShortSeason) -> BTreeMap<u64, String> {
    let players = season.seen().players().expect(200).into_iter();
    players
        .map(|player| (player.seat.unwrap(), player.id))
        .collect()
}

/// The printed table for four (FIDE Handbook C.05, annex 1), attacker first.
const FOUR: [[(u64, u64); 2]; 3] = [[(1, 4), (2, 3)], [(4, 3), (1, 2)], [(2, 4), (3, 1)]];

#[test]
fn four_players_meet_as_the_printed_table_says_and_the_file_proves_it() {
    let season = ShortSeason::begin(3, round_robin(), &PEOPLE[..4]);
    let seats = seats(&season);
    assert_eq!(seats.keys().copied().collect::<Vec<_>>(), [1, 2, 3, 4]);
    for (week, table) in (1..).zip(FOUR) {
        season.open(week);
        let games = season.pair(week);
        let played: BTreeSet<_> = games
            .iter()
            .map(|game| game.sides().map(str::to_owned))
            .collect();
        let printed: BTreeSet<_> = table
            .into_iter()
            .map(|(a, b)| [seats[&a].clone(), seats[&b].clone()])
            .collect();
        assert_eq!(played, printed, "week {week}");
        let words = season.seen_rounds(week).remove(0).words;
        let ahead = &words.looked_ahead;
        assert!(
            ahead.contains(&format!("{} more of its rounds", 3 - week)),
            "{ahead}"
        );
        let settled = |sentence: &&str| sentence.contains("settled before the round was drawn");
        assert_eq!(words.sentences().into_iter().filter(settled).count(), 2);
        season.rule_out(week);
    }
    let export = season.end();
    let other = export.pointer("/weeks/2/rounds/0/inputs/fixed/0").unwrap();
    cheat(&export, "/weeks/1/rounds/0/inputs/fixed/0", other, BY_TABLE);
    // Rules that cannot be read excuse nobody from the table.
    let place = "/policy/rounds/per_week";
    cheat(&export, place, &json!(0), "drawn by lot");
    // The last seat may be a latecomer's, so the first two are changed.
    let mut swapped = export.clone();
    let players = swapped.pointer_mut("/players").unwrap();
    for player in players.as_array_mut().unwrap() {
        let seat = player.get_mut("seat").unwrap();
        let number = seat.as_u64().unwrap();
        if number <= 2 {
            *seat = json!(3 - number);
        }
    }
    let (content, said) = verify(&swapped);
    assert!(!content && said.contains("BROKEN"), "{said}");
    let broken = |line: &str| line.starts_with("BROKEN") && line.contains("drawn by lot");
    assert!(said.lines().any(broken), "{said}");
}

const BY_TABLE: &str = "keeps to the round robin's table";

fn cheat(export: &Value, place: &str, forged: &Value, promise: &str) {
    let mut export = export.clone();
    *export.pointer_mut(place).unwrap() = forged.clone();
    let (content, said) = verify(&export);
    assert!(!content);
    let broken = |line: &str| line.starts_with("BROKEN") && line.contains(promise);
    assert!(said.lines().any(broken), "{said}");
}

/// Five players: one sits out each week. One is away in week 1, one comes late and takes the sixth
/// seat, and the weeks after the table are for what was missed.
#[test]
fn who_is_away_or_late_catches_up_and_everybody_meets_everybody_once() {
    let mut season = ShortSeason::begin(9, round_robin(), &PEOPLE[..5]);
    let away = season.players[0].clone();
    season.week(1).by(&away).tell_nights(&[]).expect(204);
    let mut met: BTreeMap<[String; 2], u8> = BTreeMap::new();
    for week in 1..=9 {
        if week == 3 {
            season.show(&season.times(week).announce_at);
            let late = season.stage.join(PEOPLE[5]);
            season.players.push(late);
            assert_eq!(seats(&season)[&6], season.players[5].id);
        }
        season.open(week);
        let round = season.propose(week);
        if round.status == 409 {
            round.refused(409, "no-round-possible");
            assert!(week > 5, "the table has five rounds");
            season.week(week).close().refused(409, "week-state");
            season.show(&season.times(week).play_until_at);
            season.week(week).close().expect(204);
            continue;
        }
        let games = season.publish(&round.expect(201));
        if week == 1 {
            assert!(!games.iter().any(|game| game.is_of(&away.id)));
        }
        for game in meetings(&games) {
            *met.entry(game.pair()).or_default() += 1;
        }
        season.rule_out(week);
    }
    assert!(met.values().all(|&times| times == 1), "{met:?}");
    assert_eq!(met.len(), 6 * 5 / 2, "everybody has met everybody");
    season.end();
}

#[test]
fn a_round_robin_has_a_seat_for_everybody_and_the_rounds_it_needs() {
    let season = ShortSeason::begin(3, round_robin(), &PEOPLE[..4]);
    let late = season.stage.welcome(PEOPLE[4]);
    let late = season.season().by(&late);
    let join = || late.join("Tamselle", "sodwether-moot", &["first"]);
    join().refused(409, "season-full");

    let gone = &season.players[2];
    let seats = seats(&season);
    let (seat, _) = seats.iter().find(|(_, id)| **id == gone.id).unwrap();
    let place = season.season().player(&gone.id).by(gone);
    place.withdraw().expect(200);
    let taken = join().expect(201);
    assert_eq!(taken.seat, Some(*seat), "the seat that was left");
}

#[test]
fn a_season_that_is_too_short_for_its_table_does_not_start() {
    let stage = Stage::with(|season| {
        short(season, 2);
        season.rounds(round_robin());
    });
    for handle in &PEOPLE[..4] {
        stage.join(handle);
    }
    let problem = stage.season.start().refused(409, "no-round-possible");
    assert_eq!((problem.limit(), problem.actual()), (&json!(3), &json!(2)));
}

#[test]
fn a_repaired_round_of_the_table_lets_nobody_meet_ahead_of_it() {
    let season = ShortSeason::begin(3, round_robin(), &PEOPLE[..4]);
    season.open(1);
    let round = season.propose(1).expect(201);
    let games = season.publish(&round);
    let ill = Repair::because("One player less tonight").without(&games[0].first);
    let repair = season.season().round(&round.id).repair(&ill).expect(201);
    let after = season.publish(&repair);
    assert!(after.contains(&games[1]), "the other game stays: {after:?}");
    let alone = after.iter().find(|game| game.is_bye()).unwrap();
    assert_eq!(
        alone.first,
        games[0].second(),
        "waits for a week in which both are free"
    );
    assert!(verify(&season.export()).0);
}

#[test]
fn who_turns_up_after_all_has_the_game_of_the_table() {
    let season = ShortSeason::begin(3, round_robin(), &PEOPLE[..4]);
    let late = &season.players[0];
    season.week(1).by(late).tell_nights(&[]).expect(204);
    season.open(1);
    let round = season.propose(1).expect(201);
    let games = season.publish(&round);
    let alone = games.iter().find(|game| game.is_bye()).unwrap();
    let turned_up =
        Repair::because("Somebody more tonight").can_come(&late.id, &["first", "second"]);
    let repair = season.season().round(&round.id).repair(&turned_up);
    let after = season.publish(&repair.expect(201));
    assert_eq!(after.len(), 2);
    let meets = |game: &Game| game.is_of(&late.id) && game.is_of(&alone.first);
    assert!(after.iter().any(meets), "{after:?}");
    let export = season.export();
    assert!(verify(&export).0);
    let ahead = json!([late.id, meetings(&games)[0].first]);
    cheat(
        &export,
        "/weeks/0/rounds/1/inputs/allowed/0",
        &ahead,
        BY_TABLE,
    );
}
