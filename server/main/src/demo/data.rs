//! The files of `demo/`, and the request bodies that are made from them.

use std::collections::BTreeMap;

use chrono::NaiveDate;
use serde::Deserialize;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};

/// The password of every account of the demo.
pub const PASSWORD: &str = "six lanterns on the ford";

/// The short name of the demo's club.
pub const CLUB: &str = "lamplit-ford";

const CATALOGUE: &str = include_str!("../../../../demo/catalogue.json");
const LISTS: &str = include_str!("../../../../demo/lists.json");
const LIST_RULES: &str = include_str!("../../../../demo/list_rules.json");
const PAINTING: &str = include_str!("../../../../demo/painting.json");
const PAIRING: &str = include_str!("../../../../demo/pairing.json");
const PLAYERS: &str = include_str!("../../../../demo/players.json");
const PAINTING_LOG: &str = include_str!("../../../../demo/painting_log.json");
const REVEALS: &str = include_str!("../../../../demo/reveals.json");
const RESULTS: &str = include_str!("../../../../demo/results.json");
const SCENARIOS: &str = include_str!("../../../../demo/scenarios.json");
const SCORING: &str = include_str!("../../../../demo/scoring.json");
const SEASON: &str = include_str!("../../../../demo/season.json");
const STORY: &str = include_str!("../../../../demo/story.json");
const TIE_BREAKS: &str = include_str!("../../../../demo/tie_breaks.json");

/// Somebody of the demo.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Person {
    /// Name in the club and in the season.
    pub handle: String,
    /// Key of the faction.
    pub faction: String,
    pub nights: Vec<String>,
    /// Hours a week for painting.
    pub hours_per_week: u32,
    /// How well they play: the higher, the better.
    pub form: i32,
    /// What they are in the club, if more than a player.
    #[serde(default)]
    pub role: Option<String>,
    /// Whom they share a home with.
    #[serde(default)]
    pub household: Option<String>,
    /// Under age, with a guardian's consent.
    #[serde(default)]
    pub minor: bool,
    /// Whether half of the first list was painted before the season.
    #[serde(default)]
    pub half_painted: bool,
    /// First week, for who comes later.
    #[serde(default = "first")]
    pub joins_in_week: u8,
}

/// How a game of a week may have gone: counts by item, of the better player and the other.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GameCourse {
    /// Of whoever plays better.
    pub ahead: Value,
    pub behind: Value,
}

/// What goes wrong in the demo's season.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Story {
    /// A list with leave after the deadline.
    pub late_list: Incident,
    /// Absent with notice.
    pub absent: Incident,
    /// Withdraws before the week.
    pub withdrawal: Incident,
    /// Objects to a report.
    pub dispute: DemoDispute,
    /// Does not turn up.
    pub no_show: Incident,
    /// A claim to be painted that the opponent refuses.
    pub refused_claim: Incident,
    /// Who has handed in no list yet for the week that lies ahead.
    pub without_list: Vec<String>,
}

/// Who, when and why.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Incident {
    pub player: String,
    pub week: u8,
    /// The reason, where one is given.
    #[serde(default)]
    pub reason: String,
}

/// A dispute and its end.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DemoDispute {
    /// Handle of who objects.
    pub player: String,
    pub week: u8,
    pub reason: String,
    /// What the referee says.
    pub ruling: String,
}

fn first() -> u8 {
    1
}

impl Person {
    /// E-mail address of the account.
    pub fn email(&self) -> String {
        format!("{}@example.org", self.handle.to_lowercase())
    }
}

/// The catalogue, as its import takes it.
///
/// # Errors
/// A file that is no JSON; so with every function here.
pub fn catalogue() -> serde_json::Result<Value> {
    part(CATALOGUE)
}

/// Where the season is played: an IANA zone.
///
/// # Errors
/// As [`catalogue`].
pub fn zone() -> serde_json::Result<String> {
    let season: Value = part(SEASON)?;
    Ok(season["zone"].as_str().unwrap_or_default().to_owned())
}

/// The scenarios of the weeks with their reveals, as they are written.
///
/// # Errors
/// As [`catalogue`].
pub fn scenarios() -> serde_json::Result<Vec<Value>> {
    let reveals: Vec<Value> = part(REVEALS)?;
    let sheets = sheets()?.into_iter().zip(reveals);
    let scenario = |(sheet, reveal): (Value, Value)| json!({ "sheet": sheet, "title": reveal["title"], "full": reveal["full"] });
    Ok(sheets.map(scenario).collect())
}

/// The scenario sheets, week by week.
///
/// # Errors
/// As [`catalogue`].
pub fn sheets() -> serde_json::Result<Vec<Value>> {
    part(SCENARIOS)
}

/// The people, the owner of the club first.
///
/// # Errors
/// As [`catalogue`].
pub fn people() -> serde_json::Result<Vec<Person>> {
    part(PLAYERS)
}

/// The season that begins on `first_day`, as its creation takes it.
///
/// # Errors
/// As [`catalogue`].
pub fn season(catalogue: &str, first_day: NaiveDate) -> serde_json::Result<Value> {
    let mut season: Value = part(SEASON)?;
    season["catalogue"] = json!(catalogue);
    season["calendar"]["first_day"] = json!(first_day);
    season["policy"] = json!({
        "list_rules": part::<Value>(LIST_RULES)?,
        "scoring": part::<Value>(SCORING)?,
        "painting": part::<Value>(PAINTING)?,
        "tie_breaks": part::<Value>(TIE_BREAKS)?,
        "pairing": part::<Value>(PAIRING)?,
        "confirm_within_hours": 48,
    });
    Ok(season)
}

/// The army lists of every player by handle, from the player's first week on.
///
/// # Errors
/// As [`catalogue`].
pub fn lists() -> serde_json::Result<BTreeMap<String, Vec<Value>>> {
    part(LISTS)
}

/// The units that everybody painted on, by handle and week: bodies of claims.
///
/// # Errors
/// As [`catalogue`].
pub fn painting_log() -> serde_json::Result<BTreeMap<String, Vec<Vec<Value>>>> {
    part(PAINTING_LOG)
}

/// The courses of the games of each week, the closest first.
///
/// # Errors
/// As [`catalogue`].
pub fn results() -> serde_json::Result<Vec<Vec<GameCourse>>> {
    part(RESULTS)
}

/// What goes wrong.
///
/// # Errors
/// As [`catalogue`].
pub fn story() -> serde_json::Result<Story> {
    part(STORY)
}

fn part<T: DeserializeOwned>(text: &str) -> serde_json::Result<T> {
    serde_json::from_str(text)
}
