//! A client of a round, with orders and repairs as request bodies.

use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::game::Game;
use super::resource::client;
use crate::harness::Answer;

client! {
    /// A round of a week, proposed or published.
    RoundClient;
}

#[derive(Clone, Debug, Deserialize)]
pub struct Round {
    pub id: String,
    pub number: u64,
    pub version: u64,
    pub inputs: Inputs,
    pub proposal: Proposal,
    /// What a repair changes.
    pub changes: Vec<Change>,
    pub repair: Option<RepairOf>,
    pub words: Words,
}

/// What a round was drawn from.
#[derive(Clone, Debug, Deserialize)]
pub struct Inputs {
    pub rounds_left: u64,
    pub receipts: Vec<String>,
    pub contenders: Vec<Contender>,
    pub history: Vec<Value>,
    pub pins: Vec<[String; 2]>,
    pub forbidden: Vec<[String; 2]>,
    #[serde(default)]
    pub fixed: Vec<[String; 2]>,
}

#[derive(Clone, Debug, Deserialize)]
pub struct Contender {
    pub player: String,
    /// Of the last two rounds, `None` where the player had no float.
    pub floats: Vec<Option<String>>,
    pub household: Option<u64>,
}

#[derive(Clone, Debug, Deserialize)]
pub struct Proposal {
    pub games: Value,
    pub reasons: Vec<Reason>,
    pub cost: Vec<Cost>,
    pub cost_without_hall: Vec<Cost>,
    pub barrier: Option<Barrier>,
}

#[derive(Clone, Debug, Deserialize)]
pub struct Reason {
    pub subject: Subject,
    pub price: Price,
}

/// What a reason is about: two of the same score, a float or a bye.
#[derive(Clone, Debug, Deserialize)]
pub struct Subject {
    pub kind: String,
    pub down: Option<String>,
    pub down_score: Option<i64>,
    pub up_score: Option<i64>,
}

#[derive(Clone, Debug, Deserialize)]
pub struct Price {
    pub kind: String,
}

#[derive(Clone, Debug, Deserialize)]
pub struct Cost {
    pub level: Value,
    pub amount: u64,
}

#[derive(Clone, Debug, Deserialize)]
pub struct Barrier {
    pub odd_sets: Vec<Vec<String>>,
}

#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct Change {
    pub player: String,
    pub before: Value,
    pub after: Value,
}

#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct RepairOf {
    pub of: String,
    pub reason: String,
}

/// The round explained in sentences.
#[derive(Clone, Debug, Deserialize)]
pub struct Words {
    pub reasons: Vec<Vec<String>>,
    pub hall: String,
    pub looked_ahead: String,
    pub barrier: Option<String>,
}

impl Words {
    /// Every sentence of every reason.
    pub fn sentences(&self) -> Vec<&str> {
        let sentences = self.reasons.iter().flatten();
        sentences.map(String::as_str).collect()
    }
}

/// What an organiser orders about a round before it is drawn.
#[derive(Default, Serialize)]
pub struct Orders {
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pins: Vec<[String; 2]>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    forbidden: Vec<[String; 2]>,
}

impl Orders {
    pub fn none() -> Self {
        Self::default()
    }

    /// These two meet.
    pub fn pin(mut self, one: &str, other: &str) -> Self {
        self.pins.push([one, other].map(str::to_owned));
        self
    }

    /// These two do not meet.
    pub fn forbid(mut self, one: &str, other: &str) -> Self {
        self.forbidden.push([one, other].map(str::to_owned));
        self
    }
}

/// What has befallen a published round.
#[derive(Clone, Serialize)]
pub struct Repair {
    reason: String,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    availabilities: Vec<Available>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    nights: Vec<NightLeft>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    forbidden: Vec<[String; 2]>,
}

#[derive(Clone, Serialize)]
struct Available {
    player: String,
    nights: Vec<String>,
}

#[derive(Clone, Serialize)]
struct NightLeft {
    night: String,
    tables: u32,
}

impl Repair {
    pub fn because(reason: &str) -> Self {
        Self {
            reason: reason.to_owned(),
            availabilities: Vec::new(),
            nights: Vec::new(),
            forbidden: Vec::new(),
        }
    }

    /// A player cannot come at all.
    pub fn without(self, player: &str) -> Self {
        self.can_come(player, &[])
    }

    /// A player can come on these nights alone.
    pub fn can_come(mut self, player: &str, nights: &[&str]) -> Self {
        self.availabilities.push(Available {
            player: player.to_owned(),
            nights: nights.iter().map(|night| (*night).to_owned()).collect(),
        });
        self
    }

    /// So many tables are left on a night.
    pub fn tables_left(mut self, night: &str, tables: u32) -> Self {
        let night = night.to_owned();
        self.nights.push(NightLeft { night, tables });
        self
    }

    /// These two do not meet.
    pub fn forbid(mut self, one: &str, other: &str) -> Self {
        self.forbidden.push([one, other].map(str::to_owned));
        self
    }
}

impl RoundClient {
    pub fn publish(&self) -> Answer<Vec<Game>> {
        self.act("publish")
    }

    /// Proposes the same round with what has befallen it.
    pub fn repair(&self, repair: &Repair) -> Answer<Round> {
        self.post("repairs", repair)
    }
}
