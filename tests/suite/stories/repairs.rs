//! Something befalls a published round: somebody is ill at noon, a night is lost.

use serde_json::{Value, json};

use super::results::week::{LAST_NIGHT, Week, played};
use super::season::offline::verify;
use crate::harness::Player;

const REASON: &str = "One player less tonight";

/// The five of a week whose round is published; one of them sits out.
const FIVE: [&str; 5] = ["Braewick", "Gorseley", "Joryth", "Merrowick", "Tamselle"];

struct Shocked {
    week: Week,
    round: String,
}

impl Shocked {
    fn set(handles: &[&str]) -> Self {
        let week = Week::sealed(handles);
        let round = week.propose();
        week.publish(&round);
        Self { week, round }
    }

    fn games(&self) -> Vec<Value> {
        self.week.get("games").as_array().unwrap().clone()
    }

    /// Games of two.
    fn meetings(&self) -> Vec<Value> {
        let games = self.games().into_iter();
        games.filter(|game| !game["second"].is_null()).collect()
    }

    fn bye(&self) -> String {
        let games = self.games();
        let bye = games.iter().find(|game| game["second"].is_null()).unwrap();
        bye["first"].as_str().unwrap().to_owned()
    }

    fn player(&self, id: &Value) -> &Player {
        let mut players = self.week.players.iter();
        players.find(|player| *id == player.id).unwrap()
    }

    fn repairs(&self) -> String {
        format!("rounds/{}/repairs", self.round)
    }

    fn without(&self, player: &Value) -> Value {
        let out = json!({ "player": player, "nights": [] });
        json!({ "reason": REASON, "availabilities": [out] })
    }

    fn rounds(&self) -> Value {
        let path = format!("{}/rounds", self.week.stage.week(1));
        self.week.stage.server.visitor().get(&path).expect(200)
    }

    fn export(&self) -> Value {
        self.week.get("export")
    }
}

fn players_of(changes: &Value) -> Vec<&str> {
    let changes = changes.as_array().unwrap().iter();
    let mut players: Vec<&str> = changes
        .map(|change| change["player"].as_str().unwrap())
        .collect();
    players.sort_unstable();
    players
}

#[test]
fn the_opponent_of_somebody_ill_meets_who_sat_out_and_the_other_game_stays() {
    let scene = Shocked::set(&FIVE);
    let meetings = scene.meetings();
    let (ill, left, bye) = (&meetings[0]["first"], &meetings[0]["second"], scene.bye());
    let repair = scene
        .week
        .act(&scene.repairs(), &scene.without(ill))
        .expect(201);
    assert_eq!(
        (&repair["version"], &repair["number"]),
        (&json!(2), &json!(1))
    );
    assert_eq!(
        repair["repair"],
        json!({ "of": scene.round, "reason": REASON })
    );
    let mut befallen = [ill.as_str().unwrap(), left.as_str().unwrap(), &bye];
    befallen.sort_unstable();
    assert_eq!(
        players_of(&repair["changes"]),
        befallen,
        "{}",
        repair["changes"]
    );
    assert_eq!(scene.meetings(), meetings, "a preview changes nothing");
    assert_eq!(
        scene.rounds().as_array().unwrap().len(),
        1,
        "nor is it seen"
    );

    scene.week.publish(repair["id"].as_str().unwrap());
    let after = scene.meetings();
    assert!(
        after.contains(&meetings[1]),
        "the very same game: {after:?}"
    );
    let new = after.iter().find(|game| **game != meetings[1]).unwrap();
    let mut pair = [
        new["first"].as_str().unwrap(),
        new["second"].as_str().unwrap(),
    ];
    pair.sort_unstable();
    let mut met = [left.as_str().unwrap(), &bye];
    met.sort_unstable();
    assert_eq!(pair, met);
    assert_eq!(scene.games().len(), 2, "nobody sits out");
    assert_eq!(
        scene.week.lines(scene.player(ill)),
        [("absence".to_owned(), 2)],
        "away with notice"
    );
    let rounds = scene.rounds();
    assert_eq!(
        rounds[0]["id"], scene.round,
        "what was drawn stays to be read"
    );
    assert_eq!(rounds[1]["changes"], repair["changes"]);
    assert_eq!(scene.week.acts()[0], "publish_repair");
    let again = format!("rounds/{}/publish", repair["id"].as_str().unwrap());
    scene
        .week
        .act(&again, &json!({}))
        .refused(409, "round-already-paired");
    let late = scene.without(&meetings[1]["first"]);
    scene
        .week
        .act(&scene.repairs(), &late)
        .refused(409, "round-already-paired");
}

#[test]
fn a_repair_is_verified_offline_and_each_forgery_is_named() {
    let scene = Shocked::set(&FIVE);
    let ill = scene.meetings()[0]["first"].clone();
    let repair = scene
        .week
        .act(&scene.repairs(), &scene.without(&ill))
        .expect(201);
    scene.week.publish(repair["id"].as_str().unwrap());
    let export = scene.export();
    let (content, said) = verify(&export);
    assert!(content, "{said}");
    assert!(said.contains("it repairs the version before"), "{said}");

    let at = "/weeks/0/rounds/1";
    let score = export.pointer(&format!("{at}/inputs/contenders/0/score"));
    let score = score.unwrap().as_i64().unwrap();
    let repaired = "it repairs the version before";
    let cheats: [(&str, Value, &str); 5] = [
        ("/repair/of", json!(repair["id"]), repaired),
        ("/inputs/contenders/0/score", json!(score + 9), repaired),
        ("/inputs/published/0/table", json!(17), repaired),
        ("/version", json!(3), "it is the first version of its round"),
        ("/proposal/games/0/table", json!(17), "gives the same games"),
    ];
    for (place, forged, promise) in cheats {
        let mut export = export.clone();
        *export.pointer_mut(&format!("{at}{place}")).unwrap() = forged;
        let (content, said) = verify(&export);
        assert!(!content, "{place} was forged unnoticed");
        let mut lines = said.lines();
        let named = lines.any(|line| line.starts_with("BROKEN") && line.contains(promise));
        assert!(named, "{place}: {said}");
    }
    let mut without = export.clone();
    without["weeks"][0]["rounds"].as_array_mut().unwrap().pop();
    assert!(!verify(&without).0, "a repair that is left out is missed");
}

#[test]
fn what_is_reported_stays_and_a_report_in_between_stops_the_repair() {
    let scene = Shocked::set(&FIVE);
    scene.week.stage.clock().show(LAST_NIGHT);
    let meetings = scene.meetings();
    let result = played((4, 120), (2, 90));
    let first = scene.player(&meetings[0]["first"]);
    scene.week.report(first, "first", &result).expect(200);
    let problem = scene
        .week
        .act(&scene.repairs(), &scene.without(&meetings[0]["second"]))
        .refused(422, "validation");
    assert_eq!(problem["errors"][0]["pointer"], "/availabilities/0");

    let ill = &meetings[1]["first"];
    let repair = scene
        .week
        .act(&scene.repairs(), &scene.without(ill))
        .expect(201);
    assert_eq!(repair["inputs"]["fixed"].as_array().unwrap().len(), 1);
    let game = format!(
        "{}/games/{}/report",
        scene.week.stage.season,
        meetings[1]["id"].as_str().unwrap()
    );
    let dress = |request: reqwest::blocking::RequestBuilder| {
        request.header("idempotency-key", "second").json(&result)
    };
    let there = scene.player(&meetings[1]["second"]);
    there
        .actor
        .ask(reqwest::Method::POST, &game, dress)
        .expect(200);
    let publish = format!("rounds/{}/publish", repair["id"].as_str().unwrap());
    scene
        .week
        .act(&publish, &json!({}))
        .refused(409, "slip-state-changed");
    assert_eq!(scene.meetings().len(), 2);
}

#[test]
fn a_lost_night_moves_its_games_and_nobody_meets_somebody_else() {
    let scene = Shocked::set(&FIVE);
    let meetings = scene.meetings();
    let lost = meetings[0]["night"].as_str().unwrap();
    let kept = if lost == "first" { "second" } else { "first" };
    // Everybody can come on the night that is left.
    let can = |player: &Player| json!({ "player": player.id, "nights": [kept] });
    let body = json!({
        "reason": "The hall is flooded",
        "nights": [{ "night": lost, "tables": 0 }],
        "availabilities": scene.week.players.iter().map(can).collect::<Vec<_>>(),
    });
    let repair = scene.week.act(&scene.repairs(), &body).expect(201);
    scene.week.publish(repair["id"].as_str().unwrap());
    let after = scene.meetings();
    let identity = |games: &[Value]| -> Vec<(Value, Value, Value)> {
        let mut ids: Vec<_> = games
            .iter()
            .map(|game| {
                (
                    game["id"].clone(),
                    game["first"].clone(),
                    game["second"].clone(),
                )
            })
            .collect();
        ids.sort_by_key(|(id, ..)| id.to_string());
        ids
    };
    assert_eq!(identity(&after), identity(&meetings));
    assert!(after.iter().all(|game| game["night"] == kept), "{after:?}");
}

#[test]
fn nobody_takes_their_own_opponent_out_and_a_repair_changes_something() {
    let scene = Shocked::set(&["Wennable", "Gorseley", "Joryth", "Merrowick"]);
    let own = &scene.week.players[0].id;
    let meetings = scene.meetings();
    let (ours, theirs): (Vec<&Value>, Vec<&Value>) = meetings
        .iter()
        .partition(|game| game["first"] == **own || game["second"] == **own);
    for player in [&ours[0]["first"], &ours[0]["second"]] {
        scene
            .week
            .act(&scene.repairs(), &scene.without(player))
            .refused(403, "conflict-of-interest");
    }
    let other = scene.week.stage.appoint("Kestanby", "organiser");
    let path = format!("{}/{}", scene.week.stage.season, scene.repairs());
    other
        .post(&path, &scene.without(&ours[0]["first"]))
        .expect(201);
    let out = scene.without(&theirs[0]["first"]);
    scene.week.act(&scene.repairs(), &out).expect(201);
    let nothing = json!({ "reason": "Just so" });
    scene
        .week
        .act(&scene.repairs(), &nothing)
        .refused(422, "validation");
    let unknown = json!({ "reason": "Just so", "nights": [{ "night": "never", "tables": 1 }] });
    let problem = scene
        .week
        .act(&scene.repairs(), &unknown)
        .refused(422, "validation");
    assert_eq!(problem["errors"][0]["pointer"], "/nights/0");
}

#[test]
fn somebody_who_turns_up_after_all_meets_who_sat_out() {
    let week = Week::sealed(&FIVE[..4]);
    week.tell(&week.players[3], &[]).expect(204);
    let round = week.propose();
    week.publish(&round);
    let scene = Shocked { week, round };
    let (late, bye) = (&scene.week.players[3].id, scene.bye());
    let body = json!({
        "reason": "Somebody more tonight",
        "availabilities": [{ "player": late, "nights": ["first", "second"] }],
    });
    let repair = scene.week.act(&scene.repairs(), &body).expect(201);
    scene.week.publish(repair["id"].as_str().unwrap());
    let meets = |game: &Value| {
        let players = [&game["first"], &game["second"]];
        players.contains(&&json!(late)) && players.contains(&&json!(bye))
    };
    assert!(scene.meetings().iter().any(meets));
    assert!(verify(&scene.export()).0);
}

/// Whichever comes first: the report stands and the repair is refused, or the game is gone and its
/// report with it. Never both.
#[test]
fn a_report_and_the_repair_that_takes_its_game_away_never_both_succeed() {
    let scene = Shocked::set(&FIVE);
    scene.week.stage.clock().show(LAST_NIGHT);
    let meetings = scene.meetings();
    let game = meetings[0]["id"].as_str().unwrap();
    let ill = scene.without(&meetings[0]["first"]);
    let repair = scene.week.act(&scene.repairs(), &ill).expect(201);
    let publish = format!("rounds/{}/publish", repair["id"].as_str().unwrap());
    let path = format!("{}/games/{game}/report", scene.week.stage.season);
    let there = scene.player(&meetings[0]["second"]);
    let result = played((4, 120), (2, 90));
    let dress = |request: reqwest::blocking::RequestBuilder| {
        request.header("idempotency-key", "late").json(&result)
    };
    let (published, reported) = std::thread::scope(|threads| {
        let published = threads.spawn(|| scene.week.act(&publish, &json!({})).status);
        let reported =
            threads.spawn(|| there.actor.ask(reqwest::Method::POST, &path, dress).status);
        (published.join().unwrap(), reported.join().unwrap())
    });
    let is_left = scene.meetings().iter().any(|left| left["id"] == game);
    match (published, reported) {
        (200, 404) => assert!(!is_left),
        (409, 200) => assert!(is_left),
        other => panic!("{other:?}"),
    }
}
