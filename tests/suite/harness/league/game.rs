//! A client of a game, and its slip as JSON.

use reqwest::Method;
use serde::Deserialize;
use serde_json::{Value, json};

use super::resource::client;
use crate::harness::Answer;

client! {
    /// A game and its slip.
    GameClient;
}

#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct Game {
    pub id: String,
    pub week: u8,
    pub round: String,
    pub version: u64,
    pub first: String,
    /// Nobody where the first sits out.
    pub second: Option<String>,
    pub night: Option<String>,
    pub table: Option<u64>,
    pub slip: Option<Slip>,
}

impl Game {
    pub fn is_bye(&self) -> bool {
        self.second.is_none()
    }

    #[track_caller]
    pub fn second(&self) -> &str {
        self.second.as_deref().unwrap()
    }

    /// Who plays it, in its order.
    #[track_caller]
    pub fn sides(&self) -> [&str; 2] {
        [&self.first, self.second()]
    }

    /// Who plays it, smaller identity first.
    #[track_caller]
    pub fn pair(&self) -> [String; 2] {
        let mut pair = self.sides().map(str::to_owned);
        pair.sort();
        pair
    }

    /// Whether a player plays it or sits out by it.
    pub fn is_of(&self, player: &str) -> bool {
        self.first == player || self.second.as_deref() == Some(player)
    }

    #[track_caller]
    pub fn slip(&self) -> &Slip {
        self.slip.as_ref().unwrap()
    }
}

/// What was said of a game and what stands.
#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct Slip {
    pub kind: String,
    pub confirm_due: Option<String>,
    pub report: Option<Said>,
    pub counter: Option<Said>,
    pub by: Option<String>,
    pub at: Option<String>,
    pub how: Option<String>,
    pub reason: Option<String>,
    pub ruling: Option<RulingOf>,
}

#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct Said {
    pub by: String,
    pub at: String,
    pub outcome: Value,
}

#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct RulingOf {
    pub id: String,
    pub at: String,
    pub outcome: Value,
    pub reason: String,
    pub referee: String,
}

impl Said {
    /// The game points of the two sides.
    pub fn total(&self) -> Option<&Value> {
        self.outcome.pointer("/score/total")
    }
}

/// What a result would be worth.
#[derive(Debug, Deserialize)]
pub struct Preview {
    pub kind: String,
    pub outcome: Option<Value>,
    pub league_points: Option<Value>,
    #[serde(default)]
    pub impossible: Vec<Impossible>,
}

#[derive(Debug, Deserialize)]
pub struct Impossible {
    pub limit: Option<u64>,
    pub actual: Option<u64>,
}

impl GameClient {
    pub fn view(&self) -> Answer<Game> {
        self.get("")
    }

    /// The slip as it is now.
    #[track_caller]
    pub fn slip(&self) -> Slip {
        self.view().expect(200).slip.unwrap()
    }

    pub fn preview(&self, result: &Value) -> Answer<Preview> {
        self.post("preview", result)
    }

    /// Reports a result; however often it is sent under one key, it is one report.
    pub fn report(&self, key: &str, result: &Value) -> Answer<Slip> {
        self.ask(Method::POST, "report", |request| {
            request.header("idempotency-key", key).json(result)
        })
    }

    pub fn report_without_key(&self, result: &Value) -> Answer<Slip> {
        self.post("report", result)
    }

    pub fn confirm(&self) -> Answer<Slip> {
        self.act("confirm")
    }

    pub fn dispute(&self, reason: &str) -> Answer<Slip> {
        self.post("dispute", &json!({ "reason": reason }))
    }

    /// The same, with the result that it should have been.
    pub fn dispute_with(&self, reason: &str, counter: &Value) -> Answer<Slip> {
        let body = json!({ "reason": reason, "counter": counter });
        self.post("dispute", &body)
    }

    pub fn rule(&self, outcome: &Value, reason: &str) -> Answer<Slip> {
        let body = json!({ "outcome": outcome, "reason": reason });
        self.post("rule", &body)
    }
}
