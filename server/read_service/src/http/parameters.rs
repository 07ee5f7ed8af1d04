//! Path and query parameters of the read service.

use app::Refusal;
use league::ids::{ClubId, PlayerId, SeasonId};
use league::keys::SeasonKey;
use league::week::WeekNo;
use serde::Deserialize;
use utoipa::IntoParams;
use uuid::Uuid;

use crate::http::read_error::ReadError;

/// Path of a season.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct PublicSeasonPath {
    /// The club.
    club: Uuid,
    /// The season.
    season: Uuid,
    #[serde(default)]
    #[param(ignore)]
    pub ending: String,
}

impl PublicSeasonPath {
    /// What the cache is keyed by.
    pub fn key(&self) -> SeasonKey {
        season_key(self.club, self.season)
    }
}

/// Path of a player.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct PublicPlayerPath {
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

impl PublicPlayerPath {
    /// What the cache is keyed by.
    pub fn key(&self) -> SeasonKey {
        season_key(self.club, self.season)
    }

    pub fn player(&self) -> PlayerId {
        PlayerId(self.player)
    }
}

/// Path of a record.
#[derive(Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct RecordPath {
    /// The club.
    club: Uuid,
    /// The record, as its player was given it.
    pub record: Uuid,
    #[serde(default)]
    #[param(ignore)]
    pub ending: String,
}

impl RecordPath {
    pub fn club(&self) -> ClubId {
        ClubId(self.club)
    }
}

/// Query of what has no week.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct CurrentQuery {
    /// A version of the season that you know of: nothing older is answered, and nothing at all
    /// where the season has not come to it.
    #[param(example = 41)]
    pub at_least: Option<i64>,
}

/// Query of what may be narrowed to a week.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct PublicWeekQuery {
    /// The week, from 1.
    #[param(minimum = 1, maximum = 52, example = 3)]
    week: Option<u8>,
    /// A version of the season that you know of: nothing older is answered, and nothing at all
    /// where the season has not come to it.
    #[param(example = 41)]
    pub at_least: Option<i64>,
}

impl PublicWeekQuery {
    /// # Errors
    /// 404 for a number that no season has.
    pub fn week(&self) -> Result<Option<WeekNo>, ReadError> {
        self.week.map(week_no).transpose()
    }
}

/// Query of a table, as it is or as it stood at a version.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct TableQuery {
    /// The week, from 1; the last that was paired, then or now, when absent.
    #[param(minimum = 1, maximum = 52, example = 3)]
    week: Option<u8>,
    /// The table as it stood at this version of the season. Rows are kept from the start of the season
    /// on, the lines of a ledger from the close of their week on.
    #[param(example = 41)]
    version: Option<i64>,
    /// A version of the season that you know of: nothing older is answered, and nothing at all
    /// where the season has not come to it.
    #[param(example = 41)]
    pub at_least: Option<i64>,
}

/// The table that a query asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RequestedTable {
    /// As it is now.
    Now(Option<WeekNo>),
    /// As it stood at a version of the season.
    AsOf(Option<WeekNo>, i64),
}

impl TableQuery {
    /// # Errors
    /// 404 for a number that no season has.
    pub fn table(&self) -> Result<RequestedTable, ReadError> {
        let week = self.week.map(week_no).transpose()?;
        Ok(match self.version {
            None => RequestedTable::Now(week),
            Some(version) => RequestedTable::AsOf(week, version),
        })
    }
}

fn season_key(club: Uuid, season: Uuid) -> SeasonKey {
    SeasonKey {
        club: ClubId(club),
        season: SeasonId(season),
    }
}

fn week_no(week: u8) -> Result<WeekNo, ReadError> {
    WeekNo::new(week).ok_or(ReadError::Refused(Refusal::NotFound))
}
