//! A client of a player's place in a season.

use serde::Deserialize;
use serde_json::{Value, json};

use super::resource::client;
use crate::harness::{Actor, Answer};

client! {
    /// A player's place in a season.
    PlayerClient;
}

/// Somebody who plays in the season.
#[derive(Clone)]
pub struct Player {
    pub actor: Actor,
    pub id: String,
}

impl AsRef<Actor> for Player {
    fn as_ref(&self) -> &Actor {
        &self.actor
    }
}

/// A player's place, as the season shows it.
#[derive(Clone, Debug, Deserialize)]
pub struct Joined {
    pub id: String,
    pub handle: String,
    /// Of a round robin's table.
    pub seat: Option<u64>,
    pub left_after_week: Option<u8>,
}

impl PlayerClient {
    pub fn update(&self, change: &Value) -> Answer<Joined> {
        self.patch("", change)
    }

    pub fn live_at(&self, household: &str) -> Answer<Joined> {
        self.update(&json!({ "household": household }))
    }

    pub fn withdraw(&self) -> Answer<Joined> {
        self.act("withdraw")
    }
}
