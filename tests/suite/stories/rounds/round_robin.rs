use std::collections::{BTreeMap, BTreeSet};

use serde_json::{Value, json};

use super::super::season::offline::verify;
use super::{PEOPLE, Short, meetings, pair};

fn round_robin() -> Value {
    json!({ "kind": "round_robin" })
}

fn seats(season: &Short) -> BTreeMap<u64, String> {
    let players = season.get("players");
    players
        .as_array()
        .unwrap()
        .iter()
        .map(|player| {
            let id = player["id"].as_str().unwrap().to_owned();
            (player["seat"].as_u64().unwrap(), id)
        })
        .collect()
}

/// The printed table for four (FIDE Handbook C.05, annex 1), attacker first.
const FOUR: [[(u64, u64); 2]; 3] = [[(1, 4), (2, 3)], [(4, 3), (1, 2)], [(2, 4), (3, 1)]];

#[test]
fn four_players_meet_as_the_printed_table_says_and_the_file_proves_it() {
    let season = Short::begin(3, round_robin(), &PEOPLE[..4]);
    let seats = seats(&season);
    assert_eq!(seats.keys().copied().collect::<Vec<_>>(), [1, 2, 3, 4]);
    for (week, table) in (1..).zip(FOUR) {
        season.open(week);
        let games = season.pair(week);
        let played: BTreeSet<_> = games
            .iter()
            .map(|game| ["first", "second"].map(|side| game[side].as_str().unwrap().to_owned()))
            .collect();
        let printed: BTreeSet<_> = table
            .into_iter()
            .map(|(a, b)| [seats[&a].clone(), seats[&b].clone()])
            .collect();
        assert_eq!(played, printed, "week {week}");
        let words = season.get(&format!("weeks/{week}/rounds"))[0]["words"].clone();
        let ahead = words["looked_ahead"].as_str().unwrap();
        assert!(
            ahead.contains(&format!("{} more of its rounds", 3 - week)),
            "{ahead}"
        );
        let reasons = words["reasons"].to_string();
        assert_eq!(
            reasons
                .matches("settled before the round was drawn")
                .count(),
            2
        );
        season.rule_out(week);
    }
    let export = season.end();
    cheat(
        &export,
        "/weeks/1/rounds/0/inputs/fixed/0",
        &export["weeks"][2]["rounds"][0]["inputs"]["fixed"][0],
    );
    // The last seat may be a latecomer's, so the first two are changed.
    let mut swapped = export.clone();
    for player in swapped["players"].as_array_mut().unwrap() {
        let seat = player["seat"].as_u64().unwrap();
        if seat <= 2 {
            player["seat"] = json!(3 - seat);
        }
    }
    let (content, said) = verify(&swapped);
    assert!(!content && said.contains("BROKEN"), "{said}");
    let broken = |line: &str| line.starts_with("BROKEN") && line.contains("drawn by lot");
    assert!(said.lines().any(broken), "{said}");
}

fn cheat(export: &Value, place: &str, forged: &Value) {
    let mut export = export.clone();
    *export.pointer_mut(place).unwrap() = forged.clone();
    let (content, said) = verify(&export);
    assert!(!content);
    let broken = |line: &str| {
        line.starts_with("BROKEN") && line.contains("keeps to the round robin's table")
    };
    assert!(said.lines().any(broken), "{said}");
}

/// Five players: one sits out each week. One is away in week 1, one comes late and takes the sixth
/// seat, and the weeks after the table are for what was missed.
#[test]
fn who_is_away_or_late_catches_up_and_everybody_meets_everybody_once() {
    let mut season = Short::begin(9, round_robin(), &PEOPLE[..5]);
    let away = season.players[0].id.clone();
    let path = format!("{}/availability", season.stage.week(1));
    let none = json!({ "nights": [] });
    season.players[0].actor.put(&path, &none).expect(204);
    let mut met: BTreeMap<[String; 2], u8> = BTreeMap::new();
    for week in 1..=9 {
        if week == 3 {
            season.show(week, "announce_at");
            let late = season.stage.join(PEOPLE[5]);
            season.players.push(late);
            assert_eq!(seats(&season)[&6], season.players[5].id);
        }
        season.open(week);
        let round = season.propose(week);
        if round.status == 409 {
            round.refused(409, "no-round-possible");
            assert!(week > 5, "the table has five rounds");
            let close = format!("weeks/{week}/close");
            season.act(&close, &json!({})).refused(409, "week-state");
            season.show(week, "play_until_at");
            season.act(&close, &json!({})).expect(204);
            continue;
        }
        let games = season.publish(&round.expect(201));
        if week == 1 {
            assert!(!json!(games).to_string().contains(&away));
        }
        for game in meetings(&games) {
            *met.entry(pair(game)).or_default() += 1;
        }
        season.rule_out(week);
    }
    assert!(met.values().all(|&times| times == 1), "{met:?}");
    assert_eq!(met.len(), 6 * 5 / 2, "everybody has met everybody");
    season.end();
}

#[test]
fn a_round_robin_has_a_seat_for_everybody_and_the_rounds_it_needs() {
    let season = Short::begin(3, round_robin(), &PEOPLE[..4]);
    let late = season.stage.welcome(PEOPLE[4]);
    let body = json!({ "handle": "Tamselle", "faction": "sodwether-moot", "nights": ["first"] });
    let path = format!("{}/players", season.stage.season);
    late.post(&path, &body).refused(409, "season-full");

    let gone = &season.players[2];
    let seat = seats(&season)
        .into_iter()
        .find(|(_, id)| *id == gone.id)
        .unwrap()
        .0;
    let withdraw = format!("{path}/{}/withdraw", gone.id);
    gone.actor.post(&withdraw, &json!({})).expect(200);
    let taken = late.post(&path, &body).expect(201);
    assert_eq!(taken["seat"], seat, "the seat that was left");
}

#[test]
fn a_season_that_is_too_short_for_its_table_does_not_start() {
    let stage = crate::harness::Stage::with(|season| {
        season["caps"] = json!({ "kind": "step", "first": 300, "step": 100, "weeks": 2 });
        season["policy"]["list_rules"] = json!([]);
        season["policy"]["rounds"] = round_robin();
        season["places"] = Value::Null;
    });
    for handle in &PEOPLE[..4] {
        stage.join(handle);
    }
    let problem = stage
        .wennable
        .post(&format!("{}/start", stage.season), &json!({}))
        .refused(409, "no-round-possible");
    assert_eq!(
        (&problem["limit"], &problem["actual"]),
        (&json!(3), &json!(2))
    );
}

#[test]
fn a_repaired_round_of_the_table_lets_nobody_meet_ahead_of_it() {
    let season = Short::begin(3, round_robin(), &PEOPLE[..4]);
    season.open(1);
    let round = season.propose(1).expect(201);
    let games = season.publish(&round);
    let ill = games[0]["first"].clone();
    let body = json!({
        "reason": "One player less tonight",
        "availabilities": [{ "player": ill, "nights": [] }],
    });
    let path = format!("rounds/{}/repairs", round["id"].as_str().unwrap());
    let repair = season.act(&path, &body).expect(201);
    let after = season.publish(&repair);
    assert!(after.contains(&games[1]), "the other game stays: {after:?}");
    let alone = after.iter().find(|game| game["second"].is_null()).unwrap();
    assert_eq!(
        alone["first"], games[0]["second"],
        "waits for a week in which both are free"
    );
    assert!(verify(&season.get("export")).0);
}

#[test]
fn who_turns_up_after_all_has_the_game_of_the_table() {
    let season = Short::begin(3, round_robin(), &PEOPLE[..4]);
    let late = &season.players[0];
    let path = format!("{}/availability", season.stage.week(1));
    let none = json!({ "nights": [] });
    late.actor.put(&path, &none).expect(204);
    season.open(1);
    let round = season.propose(1).expect(201);
    let games = season.publish(&round);
    let alone = games.iter().find(|game| game["second"].is_null()).unwrap();
    let body = json!({
        "reason": "Somebody more tonight",
        "availabilities": [{ "player": late.id, "nights": ["first", "second"] }],
    });
    let path = format!("rounds/{}/repairs", round["id"].as_str().unwrap());
    let repair = season.act(&path, &body).expect(201);
    let after = season.publish(&repair);
    let mut expected = [late.id.clone(), alone["first"].as_str().unwrap().to_owned()];
    expected.sort();
    assert_eq!(after.len(), 2);
    assert!(after.iter().any(|game| pair(game) == expected), "{after:?}");
    let export = season.get("export");
    assert!(verify(&export).0);
    let ahead = json!([late.id, meetings(&games)[0]["first"]]);
    cheat(&export, "/weeks/0/rounds/1/inputs/allowed/0", &ahead);
}
