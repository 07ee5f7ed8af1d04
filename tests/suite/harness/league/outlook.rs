//! Forecasts, statistics, awards and the fairness audit as JSON.

use serde::Deserialize;
use serde_json::Value;

/// How a season may end.
#[derive(Debug, Deserialize, PartialEq)]
pub struct Forecast {
    pub as_of: u8,
    pub rounds_to_come: u8,
    pub rank: u64,
    pub runs: u64,
    pub seed: u64,
    pub version: i64,
    pub players: Vec<PlayerForecast>,
}

#[derive(Debug, Deserialize, PartialEq)]
pub struct PlayerForecast {
    pub player: String,
    pub at_rank: Interval,
    /// How many runs ended with the player at each rank.
    pub ended: Vec<u64>,
}

#[derive(Debug, Deserialize, PartialEq)]
pub struct Interval {
    pub successes: u64,
    pub trials: u64,
    pub low: f64,
    pub high: f64,
}

/// What a player can still reach.
#[derive(Debug, Deserialize)]
pub struct Reach {
    pub best: u64,
    pub worst: u64,
    pub needed: Option<i64>,
    pub enough: Option<i64>,
}

#[derive(Debug, Deserialize)]
pub struct Statistics {
    pub fewest_games: u64,
    pub scenarios: Vec<Tally>,
    pub factions: Vec<Tally>,
    pub roles: Vec<Tally>,
    pub met: Vec<Met>,
}

#[derive(Debug, Deserialize)]
pub struct Tally {
    pub key: String,
    pub won: u64,
    /// Whether there are too few games to speak of a share.
    pub too_few: bool,
    pub win_share: Option<Interval>,
}

#[derive(Debug, Deserialize)]
pub struct Met {
    pub player: String,
    pub opponents: Vec<String>,
}

#[derive(Debug, Deserialize)]
pub struct Awards {
    pub is_final: bool,
    pub awards: Vec<Award>,
}

#[derive(Debug, Deserialize)]
pub struct Award {
    pub prize: String,
    pub holders: Vec<String>,
}

#[derive(Debug, Deserialize)]
pub struct Attendance {
    pub as_of: u8,
    pub weeks: Vec<WeekAttendance>,
}

/// How many of a week's players came.
#[derive(Debug, Deserialize)]
pub struct WeekAttendance {
    pub week: u8,
    pub players: u64,
    pub came: u64,
    pub no_shows: u64,
    pub open: u64,
    pub byes: u64,
    pub away: u64,
}

/// The audit of a season's draws.
#[derive(Debug, Deserialize)]
pub struct Fairness {
    pub seed: String,
    /// How many seasons were drawn by lot to compare with.
    pub seasons: u64,
    pub tests: u64,
    pub correction: String,
    pub findings: Vec<Unusual>,
}

#[derive(Debug, Deserialize, PartialEq)]
pub struct Unusual {
    pub player: String,
    pub measure: String,
    pub value: Value,
    pub unusual: bool,
    pub sentence: String,
    pub as_far: u64,
    pub expected_sum: Value,
}
