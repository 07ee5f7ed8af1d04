//! Several rounds in one week, and a season in which everybody meets everybody.

mod explained;
mod round_robin;
mod two_a_week;

use serde_json::{Value, json};
use tallyhost::demo::data;

use super::season::offline::verify;
use crate::harness::{Answer, Player, Stage};

/// A short season without list rules, whose players can come on both nights.
pub struct Short {
    pub stage: Stage,
    pub players: Vec<Player>,
    weeks: Value,
}

/// People who can come on both nights.
pub const PEOPLE: [&str; 6] = [
    "Braewick",
    "Gorseley",
    "Joryth",
    "Merrowick",
    "Tamselle",
    "Ilkamar",
];

impl Short {
    /// Of so many weeks, with these rules for its rounds.
    pub fn begin(weeks: u8, rounds: Value, handles: &[&str]) -> Self {
        Self::with(
            weeks,
            |season| season["policy"]["rounds"] = rounds,
            |stage| handles.iter().map(|handle| stage.join(handle)).collect(),
        )
    }

    /// Of so many weeks, changed in other ways, with those whom `join` brings.
    pub fn with(
        weeks: u8,
        change: impl FnOnce(&mut Value),
        join: impl FnOnce(&Stage) -> Vec<Player>,
    ) -> Self {
        let stage = Stage::with(|season| {
            season["caps"] = json!({ "kind": "step", "first": 300, "step": 100, "weeks": weeks });
            season["policy"]["list_rules"] = json!([]);
            season["places"] = Value::Null;
            change(season);
        });
        let sheet = json!({ "sheet": data::sheets().unwrap()[0] });
        for week in 1..=weeks {
            let path = format!("{}/scenario", stage.week(week));
            stage.wennable.put(&path, &sheet).expect(204);
        }
        let players = join(&stage);
        stage.start();
        let weeks = stage.wennable.get(&format!("{}/weeks", stage.season));
        Self {
            players,
            weeks: weeks.expect(200),
            stage,
        }
    }

    pub fn act(&self, path: &str, body: &Value) -> Answer {
        let path = format!("{}/{path}", self.stage.season);
        self.stage.wennable.post(&path, body)
    }

    pub fn get(&self, path: &str) -> Value {
        let path = format!("{}/{path}", self.stage.season);
        self.stage.server.visitor().get(&path).expect(200)
    }

    pub fn show(&self, week: u8, moment: &str) {
        let at = &self.weeks[usize::from(week) - 1][moment];
        self.stage.clock().show(at.as_str().unwrap());
    }

    pub fn open(&self, week: u8) {
        self.show(week, "lists_accepted_until");
        self.act(&format!("weeks/{week}/lists/open"), &json!({}))
            .expect(204);
    }

    pub fn propose(&self, week: u8) -> Answer {
        self.act(&format!("weeks/{week}/rounds"), &json!({}))
    }

    /// Proposes and publishes; returns the games.
    pub fn pair(&self, week: u8) -> Vec<Value> {
        let round = self.propose(week).expect(201);
        self.publish(&round)
    }

    pub fn publish(&self, round: &Value) -> Vec<Value> {
        let path = format!("rounds/{}/publish", round["id"].as_str().unwrap());
        let games = self.act(&path, &json!({})).expect(200);
        games.as_array().unwrap().clone()
    }

    /// The second side of every game of a week did not come, and the week is closed.
    pub fn decide(&self, week: u8) {
        let absent = json!({ "kind": "no_show", "absent": "second", "notice": "not_given" });
        self.settle(week, &absent);
    }

    /// Nobody gets anything for the games of a week.
    pub fn rule_out(&self, week: u8) {
        self.settle(week, &json!({ "kind": "double_loss" }));
    }

    fn settle(&self, week: u8, outcome: &Value) {
        for game in self.get(&format!("games?week={week}")).as_array().unwrap() {
            if !game["second"].is_null() {
                let path = format!("games/{}/rule", game["id"].as_str().unwrap());
                let body = json!({ "outcome": outcome, "reason": "The hall was shut" });
                self.act(&path, &body).expect(200);
            }
        }
        self.act(&format!("weeks/{week}/close"), &json!({}))
            .expect(204);
    }

    /// The season over, its file checked with nothing else.
    pub fn end(&self) -> Value {
        self.act("end", &json!({})).expect(200);
        let export = self.get("export");
        let (content, said) = verify(&export);
        assert!(content, "{said}");
        assert!(!said.contains("open  "), "{said}");
        export
    }
}

/// The two players of a game, smaller identity first.
pub fn pair(game: &Value) -> [String; 2] {
    let mut pair = ["first", "second"].map(|side| game[side].as_str().unwrap().to_owned());
    pair.sort();
    pair
}

/// Games of two.
pub fn meetings(games: &[Value]) -> Vec<&Value> {
    let games = games.iter();
    games.filter(|game| !game["second"].is_null()).collect()
}
