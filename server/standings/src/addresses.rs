//! What the addresses of the read service say.

use app::Refusal;
use league::ids::{ClubId, PlayerId, SeasonId};
use league::week::WeekNo;
use serde::Deserialize;
use utoipa::IntoParams;
use uuid::Uuid;

use crate::shelf::Key;
use crate::turned::Turned;

/// A season's address.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct InSeason {
    /// The club.
    club: Uuid,
    /// The season.
    season: Uuid,
    #[serde(default)]
    #[param(ignore)]
    pub ending: String,
}

impl InSeason {
    /// As the shelf knows it.
    pub fn key(&self) -> Key {
        (ClubId(self.club), SeasonId(self.season))
    }
}

/// A player's address.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct OnePlayer {
    /// The club.
    club: Uuid,
    /// The season.
    season: Uuid,
    /// The player.
    player: Uuid,
    #[serde(default)]
    #[param(ignore)]
    pub ending: String,
}

impl OnePlayer {
    /// The season as the shelf knows it.
    pub fn key(&self) -> Key {
        (ClubId(self.club), SeasonId(self.season))
    }

    /// The player.
    pub fn player(&self) -> PlayerId {
        PlayerId(self.player)
    }
}

/// A record's address.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct OneRecord {
    /// The club.
    club: Uuid,
    /// The record, as its player was given it.
    pub record: Uuid,
    #[serde(default)]
    #[param(ignore)]
    pub ending: String,
}

impl OneRecord {
    /// The club.
    pub fn club(&self) -> ClubId {
        ClubId(self.club)
    }
}

/// Something of now.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct OfNow {
    /// A version of the season that you know of: nothing older is answered.
    #[param(example = 41)]
    pub at_least: Option<i64>,
}

/// Something of a week.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct OfWeek {
    /// The week, from 1.
    #[param(minimum = 1, maximum = 52, example = 3)]
    week: Option<u8>,
    /// A version of the season that you know of: nothing older is answered.
    #[param(example = 41)]
    pub at_least: Option<i64>,
}

impl OfWeek {
    /// # Errors
    /// 404 for a number that no season has.
    pub fn week(&self) -> Result<Option<WeekNo>, Turned> {
        self.week.map(week_no).transpose()
    }
}

/// A table, of now or as it was.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct OfTable {
    /// The week, from 1; the last that was paired, then or now, when absent.
    #[param(minimum = 1, maximum = 52, example = 3)]
    week: Option<u8>,
    /// The table as it stood at this version of the season. Rows are kept from the start of the season
    /// on, the lines of a ledger from the close of their week on.
    #[param(example = 41)]
    version: Option<i64>,
    /// A version of the season that you know of: nothing older is answered.
    #[param(example = 41)]
    pub at_least: Option<i64>,
}

/// Which table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TableAsked {
    /// As it is now.
    Now(Option<WeekNo>),
    /// As it was.
    At(Option<WeekNo>, i64),
}

impl OfTable {
    /// # Errors
    /// 404 for a number that no season has.
    pub fn table(&self) -> Result<TableAsked, Turned> {
        let week = self.week.map(week_no).transpose()?;
        Ok(match self.version {
            None => TableAsked::Now(week),
            Some(version) => TableAsked::At(week, version),
        })
    }
}

fn week_no(week: u8) -> Result<WeekNo, Turned> {
    WeekNo::new(week).ok_or(Turned::Refused(Refusal::NotFound))
}
