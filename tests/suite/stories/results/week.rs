//! The first week of the demo, played by some of its people.

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde_json::{Value, json};
use tallyhost::demo::data;

use crate::harness::{Answer, Player, Stage, demo_list};

pub const LISTS_DUE: &str = "2026-01-12T21:00:00+01:00";
/// Both nights have begun.
pub const LAST_NIGHT: &str = "2026-01-15T19:00:00+01:00";

pub struct Week {
    pub stage: Stage,
    pub players: Vec<Player>,
}

impl Week {
    /// Everybody has sealed a list.
    pub fn sealed(handles: &[&str]) -> Self {
        Self::sealed_in(Stage::draft(), handles)
    }

    /// The same in another season than the demo's.
    pub fn sealed_in(stage: Stage, handles: &[&str]) -> Self {
        let sheet = json!({ "sheet": data::sheets().unwrap()[0] });
        let scenario = format!("{}/scenario", stage.week(1));
        stage.wennable.put(&scenario, &sheet).expect(204);
        let players: Vec<Player> = handles.iter().map(|handle| stage.join(handle)).collect();
        stage.start();
        for (player, handle) in players.iter().zip(handles) {
            let path = format!("{}/list/seal", stage.week(1));
            player.actor.post(&path, &demo_list(handle, 1)).expect(201);
        }
        Self { stage, players }
    }

    /// With everybody paired, on the last night.
    pub fn paired(handles: &[&str]) -> Self {
        let week = Self::sealed(handles);
        let round = week.propose();
        week.publish(&round);
        week.stage.clock().show(LAST_NIGHT);
        week
    }

    /// A season of one week, played to its end: Oskrel has won.
    pub fn ended() -> Self {
        let stage = Stage::with(|season| {
            season["caps"] = json!({ "kind": "list", "caps": [300] });
            season["policy"]["scoring"]["best_weeks"] = Value::Null;
        });
        let week = Self::sealed_in(stage, &["Oskrel", "Corvanel"]);
        let round = week.propose();
        week.publish(&round);
        week.stage.clock().show(LAST_NIGHT);
        let [first, second] = week.sides();
        let own = if first.id == week.players[0].id {
            played((5, 150), (1, 60))
        } else {
            played((1, 60), (5, 150))
        };
        week.report(first, "one", &own).expect(200);
        let confirm = format!("{}/confirm", week.game());
        second.actor.post(&confirm, &json!({})).expect(200);
        week.act("weeks/1/close", &json!({})).expect(204);
        week.act("end", &json!({})).expect(200);
        week
    }

    /// Opens the lists and proposes the round.
    pub fn propose(&self) -> String {
        self.stage.clock().show(LISTS_DUE);
        self.act("weeks/1/lists/open", &json!({})).expect(204);
        let round = self.act("weeks/1/rounds", &json!({})).expect(201);
        round["id"].as_str().unwrap().to_owned()
    }

    /// Publishes the round.
    pub fn publish(&self, round: &str) {
        self.act(&format!("rounds/{round}/publish"), &json!({}))
            .expect(200);
    }

    /// What the organiser does.
    pub fn act(&self, path: &str, body: &Value) -> Answer {
        let path = format!("{}/{path}", self.stage.season);
        self.stage.wennable.post(&path, body)
    }

    /// What the organiser sees.
    pub fn get(&self, path: &str) -> Value {
        let path = format!("{}/{path}", self.stage.season);
        self.stage.wennable.get(&path).expect(200)
    }

    /// The path of the first game.
    pub fn game(&self) -> String {
        let games = self.get("games");
        format!(
            "{}/games/{}",
            self.stage.season,
            games[0]["id"].as_str().unwrap()
        )
    }

    /// The two players of the first game, in its order.
    pub fn sides(&self) -> [&Player; 2] {
        let games = self.get("games");
        ["first", "second"].map(|side| {
            let mut players = self.players.iter();
            players.find(|player| games[0][side] == *player.id).unwrap()
        })
    }

    /// A player reports the first game.
    pub fn report(&self, player: &Player, key: &str, result: &Value) -> Answer {
        let dress = |request: RequestBuilder| request.header("idempotency-key", key).json(result);
        player
            .actor
            .ask(Method::POST, &format!("{}/report", self.game()), dress)
    }

    /// What everybody can read of what was done, the newest first, but for what the clock reveals at
    /// moments of its own.
    pub fn acts(&self) -> Vec<String> {
        let trail = self.get("trail");
        let acts = trail.as_array().unwrap().iter();
        acts.map(|entry| entry["act"].as_str().unwrap().to_owned())
            .filter(|act| act != "reveal")
            .collect()
    }

    /// A player says which nights of the week are possible.
    pub fn tell(&self, player: &Player, nights: &[&str]) -> Answer {
        let path = format!("{}/availability", self.stage.week(1));
        player.actor.put(&path, &json!({ "nights": nights }))
    }

    /// Line by line of a player, and that they make the total.
    pub fn ledger(&self, player: &Player) -> Vec<Value> {
        let ledger = self.get(&format!("players/{}/ledger", player.id));
        let lines = ledger["lines"].as_array().unwrap().clone();
        let sum: i64 = lines
            .iter()
            .map(|line| line["amount"].as_i64().unwrap())
            .sum();
        assert_eq!(ledger["total"], sum, "{ledger}");
        lines
    }

    /// Kind and amount of every line of a player.
    pub fn lines(&self, player: &Player) -> Vec<(String, i64)> {
        let line = |line: &Value| {
            let kind = line["kind"].as_str().unwrap().to_owned();
            (kind, line["amount"].as_i64().unwrap())
        };
        self.ledger(player).iter().map(line).collect()
    }
}

/// Turns at the ford and points destroyed, of the side named first and of the other.
pub fn played(first: (u32, u32), second: (u32, u32)) -> Value {
    let side =
        |(turns, destroyed)| json!({ "items": { "ford-marker": turns, "destroyed": destroyed } });
    let leg = json!({ "first": side(first), "second": side(second) });
    json!({ "kind": "played", "counts": { "legs": [leg] } })
}
