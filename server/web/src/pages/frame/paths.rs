//! Path parameters of the pages.

use league::ids::{ClubId, GameId, SeasonId};
use league::week::WeekNo;
use serde::Deserialize;
use uuid::Uuid;

use crate::canonical_number::canonical_number;
use crate::problem::{HttpFault, Problem};

/// Path of a club.
#[derive(Clone, Copy, Deserialize)]
pub struct ClubPath {
    club: Uuid,
}

/// Path of a season.
#[derive(Clone, Copy, Deserialize)]
pub struct SeasonPath {
    club: Uuid,
    season: Uuid,
}

/// Path of a week.
#[derive(Clone, Copy, Deserialize)]
pub struct WeekPath {
    club: Uuid,
    season: Uuid,
    #[serde(deserialize_with = "canonical_number")]
    week: u8,
}

/// Path of a game.
#[derive(Clone, Copy, Deserialize)]
pub struct GamePath {
    club: Uuid,
    season: Uuid,
    game: Uuid,
}

impl GamePath {
    pub fn ids(self) -> (ClubId, SeasonId, GameId) {
        (ClubId(self.club), SeasonId(self.season), GameId(self.game))
    }
}

impl ClubPath {
    pub fn id(self) -> ClubId {
        ClubId(self.club)
    }
}

impl SeasonPath {
    pub fn ids(self) -> (ClubId, SeasonId) {
        (ClubId(self.club), SeasonId(self.season))
    }
}

impl WeekPath {
    /// # Errors
    /// 404 for a number that no season has.
    pub fn ids(self) -> Result<(ClubId, SeasonId, WeekNo), Problem> {
        let week = WeekNo::new(self.week).ok_or_else(|| Problem::http(HttpFault::NotFound))?;
        Ok((ClubId(self.club), SeasonId(self.season), week))
    }
}
