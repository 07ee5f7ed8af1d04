//! The first week of the demo, played by some of its people.

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
        let stage = Stage::draft();
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

    /// Opens the lists and proposes the round.
    pub fn propose(&self) -> String {
        self.stage.clock().show(LISTS_DUE);
        self.act("weeks/1/lists/open", &json!({})).expect(204);
        let round = self.act("weeks/1/rounds", &json!({})).expect(201);
        round["id"].as_str().unwrap().to_owned()
    }

    /// Publishes the round and goes on to the last night.
    pub fn publish(&self, round: &str) {
        self.act(&format!("rounds/{round}/publish"), &json!({}))
            .expect(200);
        self.stage.clock().show(LAST_NIGHT);
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

    /// A player says which nights of the week are possible.
    pub fn tell(&self, player: &Player, nights: &[&str]) -> Answer {
        let path = format!("{}/availability", self.stage.week(1));
        player.actor.put(&path, &json!({ "nights": nights }))
    }

    /// Kind and amount of every line of a player.
    pub fn lines(&self, player: &Player) -> Vec<(String, i64)> {
        let ledger = self.get(&format!("players/{}/ledger", player.id));
        let line = |line: &Value| {
            let kind = line["kind"].as_str().unwrap().to_owned();
            (kind, line["amount"].as_i64().unwrap())
        };
        let lines: Vec<_> = ledger["lines"]
            .as_array()
            .unwrap()
            .iter()
            .map(line)
            .collect();
        let sum: i64 = lines.iter().map(|(_, amount)| amount).sum();
        assert_eq!(ledger["total"], sum, "{ledger}");
        lines
    }
}
