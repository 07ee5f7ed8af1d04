//! A client of a week.

use serde::{Deserialize, Serialize};
use serde_json::{Value, json};

use super::list::{ListClient, WeekLists};
use super::painting::Claim;
use super::resource::client;
use super::round::{Orders, Round};
use crate::harness::{Answer, Player};

client! {
    /// A week of a season: its lists, rounds, scenario and times.
    Week;
}

/// When a week begins and ends, and how far it has come.
#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct WeekTimes {
    pub week: u8,
    pub cap: u64,
    pub phase: String,
    pub catalogue_number: u64,
    pub announce_at: String,
    /// In the season's zone.
    pub lists_due: String,
    pub lists_due_at: String,
    pub lists_accepted_until: String,
    pub play_until_at: String,
    pub lists_opened_at: Option<String>,
    pub paired_at: Option<String>,
    pub closed_at: Option<String>,
    pub nights: Vec<Night>,
}

#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct Night {
    pub key: String,
    /// In the season's zone.
    pub begins: String,
    pub tables: u64,
}

/// Whom a reminder went to.
#[derive(Debug, Deserialize)]
pub struct Reminded {
    pub players: Vec<String>,
}

impl Week {
    /// Where one player's list of the week is, for that player.
    pub fn list_of(&self, player: &Player) -> ListClient {
        ListClient(self.by(player).below("list"))
    }

    pub fn times(&self) -> Answer<WeekTimes> {
        self.get("")
    }

    pub fn update(&self, change: &Value) -> Answer<()> {
        self.patch("", change)
    }

    pub fn set_scenario(&self, scenario: &Value) -> Answer<()> {
        self.put("scenario", scenario)
    }

    pub fn scenario(&self) -> Answer {
        self.get("scenario")
    }

    pub fn lists(&self) -> Answer<WeekLists> {
        self.get("lists")
    }

    pub fn open_lists(&self) -> Answer<()> {
        self.act("lists/open")
    }

    /// Gives a player leave to hand in late.
    pub fn grant_late_leave(&self, player: &Player, reason: &str) -> Answer<()> {
        let body = json!({ "player": player.id, "reason": reason });
        self.post("late-leaves", &body)
    }

    /// Says on which nights one can come.
    pub fn tell_nights(&self, nights: &[&str]) -> Answer<()> {
        self.put("availability", &json!({ "nights": nights }))
    }

    pub fn propose(&self) -> Answer<Round> {
        self.act("rounds")
    }

    pub fn propose_with(&self, orders: &Orders) -> Answer<Round> {
        self.post("rounds", orders)
    }

    pub fn rounds(&self) -> Answer<Vec<Round>> {
        self.get("rounds")
    }

    pub fn claim(&self, unit: &str, finished: u32) -> Answer<Claim> {
        self.claim_with(unit, finished, None)
    }

    /// The same, with a photo as its proof.
    pub fn claim_with_photo(&self, unit: &str, finished: u32, photo: &str) -> Answer<Claim> {
        self.claim_with(unit, finished, Some(photo))
    }

    fn claim_with(&self, unit: &str, finished: u32, photo: Option<&str>) -> Answer<Claim> {
        #[derive(Serialize)]
        struct Body<'a> {
            unit: &'a str,
            stages: Value,
            #[serde(skip_serializing_if = "Option::is_none")]
            photo: Option<&'a str>,
        }
        let stages = json!({ "finished": finished });
        let body = Body {
            unit,
            stages,
            photo,
        };
        self.post("painting", &body)
    }

    pub fn remind(&self, about: &str) -> Answer<Reminded> {
        self.post("reminders", &json!({ "about": about }))
    }

    pub fn close(&self) -> Answer<()> {
        self.act("close")
    }
}
