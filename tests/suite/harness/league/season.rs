//! A client of a season.

use std::fmt::Display;

use reqwest::Method;
use serde::Deserialize;
use serde_json::{Value, json};

use super::club::Club;
use super::game::{Game, GameClient};
use super::list::CollectedUnit;
use super::outlook::{Attendance, Awards, Fairness, Forecast, Reach, Statistics};
use super::player::{Joined, PlayerClient};
use super::points::{Ledger, Ruling, Table};
use super::public::PublicSeason;
use super::resource::{Resource, client};
use super::round::RoundClient;
use super::trail::TrailEntry;
use super::week::{Week, WeekTimes};
use crate::harness::{Actor, Answer};

client! {
    /// A season: what is done in it, and what is read of it.
    Season;
}

#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct SeasonState {
    pub id: String,
    pub name: String,
    pub state: String,
    pub version: i64,
    pub visibility: String,
    pub zone: String,
    pub catalogue: String,
    pub places: Option<u32>,
    pub policy: Value,
    pub rules: Vec<String>,
    pub seed_commitment: Option<String>,
}

/// The next season, made from one that is over.
#[derive(Debug, Deserialize)]
pub struct NextSeason {
    pub season: SeasonState,
    pub players: Vec<Joined>,
    pub left_out: Vec<LeftOut>,
}

#[derive(Debug, Deserialize)]
pub struct LeftOut {
    pub handle: String,
    pub why: String,
}

impl Season {
    pub(super) fn at_path(actor: &Actor, path: impl Into<String>) -> Self {
        Self(Resource::new(actor, path))
    }

    /// The club that plays it.
    pub fn club(&self) -> Club {
        let (club, _) = self.path.split_once("/seasons/").unwrap();
        self.actor.club_at(club)
    }

    pub fn week(&self, week: u8) -> Week {
        Week(self.below(format_args!("weeks/{week}")))
    }

    pub fn round(&self, id: &str) -> RoundClient {
        RoundClient(self.below(format_args!("rounds/{id}")))
    }

    pub fn game(&self, id: &str) -> GameClient {
        GameClient(self.below(format_args!("games/{id}")))
    }

    pub fn player(&self, id: &str) -> PlayerClient {
        PlayerClient(self.below(format_args!("players/{id}")))
    }

    /// What everybody reads of it.
    pub fn for_everybody(&self) -> PublicSeason {
        PublicSeason::new(&self.actor, self.public(""))
    }

    pub fn state(&self) -> Answer<SeasonState> {
        self.get("")
    }

    /// Changes the season as it is now.
    pub fn update(&self, change: &Value) -> Answer<SeasonState> {
        let version = self.state().with_status(200).etag();
        self.update_from(Some(&version), change)
    }

    /// Changes the season if it still has this version.
    pub fn update_from(&self, version: Option<&str>, change: &Value) -> Answer<SeasonState> {
        self.ask(Method::PATCH, "", |request| {
            let request = request.json(change);
            match version {
                Some(version) => request.header("if-match", version),
                None => request,
            }
        })
    }

    pub fn start(&self) -> Answer<SeasonState> {
        self.act("start")
    }

    pub fn end(&self) -> Answer<SeasonState> {
        self.act("end")
    }

    /// Makes the next season from this one.
    pub fn next(&self, body: &Value) -> Answer<NextSeason> {
        self.post("next", body)
    }

    pub fn join(&self, handle: &str, faction: &str, nights: &[impl AsRef<str>]) -> Answer<Joined> {
        let nights: Vec<&str> = nights.iter().map(AsRef::as_ref).collect();
        let body = json!({ "handle": handle, "faction": faction, "nights": nights });
        self.post("players", &body)
    }

    pub fn players(&self) -> Answer<Vec<Joined>> {
        self.get("players")
    }

    pub fn weeks(&self) -> Answer<Vec<WeekTimes>> {
        self.get("weeks")
    }

    pub fn games(&self) -> Answer<Vec<Game>> {
        self.get("games")
    }

    pub fn games_of(&self, week: u8) -> Answer<Vec<Game>> {
        self.get(format_args!("games?week={week}"))
    }

    pub fn standings(&self) -> Answer<Table> {
        self.get("standings")
    }

    pub fn standings_after(&self, week: u8) -> Answer<Table> {
        self.get(format_args!("standings?week={week}"))
    }

    pub fn ledger(&self, player: &str) -> Answer<Ledger> {
        self.get(format_args!("players/{player}/ledger"))
    }

    pub fn ledger_after(&self, week: u8, player: &str) -> Answer<Ledger> {
        self.get(format_args!("players/{player}/ledger?week={week}"))
    }

    /// Gives points by a ruling, or takes them.
    pub fn adjust(&self, player: &str, week: u8, amount: i32, reason: &str) -> Answer<Ruling> {
        self.post("adjustments", &adjustment(player, week, amount, reason))
    }

    /// The same, done once however often it is sent under this key.
    pub fn adjust_once(
        &self,
        key: &str,
        (player, week, amount): (&str, u8, i32),
        reason: &str,
    ) -> Answer<Ruling> {
        let body = adjustment(player, week, amount, reason);
        self.ask(Method::POST, "adjustments", |request| {
            request.header("idempotency-key", key).json(&body)
        })
    }

    /// What was done, the newest first.
    pub fn trail(&self) -> Answer<Vec<TrailEntry>> {
        self.get("trail")
    }

    pub fn export(&self) -> Answer {
        self.get("export")
    }

    pub fn archive(&self) -> Answer {
        self.get("archive")
    }

    /// One's own units.
    pub fn collection(&self) -> Answer<Vec<CollectedUnit>> {
        self.get("collection")
    }

    pub fn what_if(&self, game: &str, outcome: &Value) -> Answer<Table> {
        let supposition = json!({ "game": game, "outcome": outcome });
        self.post("what-if", &json!({ "suppositions": [supposition] }))
    }

    pub fn forecast(&self, seed: u64, runs: u64) -> Answer<Forecast> {
        self.get(format_args!("forecast?seed={seed}&runs={runs}"))
    }

    pub fn reach(&self, player: &str, query: impl Display) -> Answer<Reach> {
        self.get(format_args!("players/{player}/reach{query}"))
    }

    pub fn statistics(&self) -> Answer<Statistics> {
        self.get("statistics")
    }

    pub fn awards(&self) -> Answer<Awards> {
        self.get("awards")
    }

    pub fn attendance(&self) -> Answer<Attendance> {
        self.get("attendance")
    }

    pub fn fairness(&self) -> Answer<Fairness> {
        self.get("fairness")
    }
}

fn adjustment(player: &str, week: u8, amount: i32, reason: &str) -> Value {
    json!({ "player": player, "week": week, "amount": amount, "reason": reason })
}
