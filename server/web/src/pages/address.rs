//! Addresses of pages: the same as those for programs, without `/api/v1`.

use league::ids::{ClubId, GameId, PlayerId, SeasonId};
use league::week::WeekNo;
use serde::Deserialize;
use uuid::Uuid;

use crate::plain_number::plain_number;
use crate::problem::{Problem, WireFault};

/// A club's address.
#[derive(Clone, Copy, Deserialize)]
pub struct InClub {
    club: Uuid,
}

/// A season's address.
#[derive(Clone, Copy, Deserialize)]
pub struct InSeason {
    club: Uuid,
    season: Uuid,
}

/// A week's address.
#[derive(Clone, Copy, Deserialize)]
pub struct InWeek {
    club: Uuid,
    season: Uuid,
    #[serde(deserialize_with = "plain_number")]
    week: u8,
}

/// A game's address.
#[derive(Clone, Copy, Deserialize)]
pub struct InGame {
    club: Uuid,
    season: Uuid,
    game: Uuid,
}

impl InGame {
    /// Club, season and game.
    pub fn ids(self) -> (ClubId, SeasonId, GameId) {
        (ClubId(self.club), SeasonId(self.season), GameId(self.game))
    }
}

impl InClub {
    /// Its identity.
    pub fn id(self) -> ClubId {
        ClubId(self.club)
    }
}

impl InSeason {
    /// Club and season.
    pub fn ids(self) -> (ClubId, SeasonId) {
        (ClubId(self.club), SeasonId(self.season))
    }
}

impl InWeek {
    /// Club, season and week.
    ///
    /// # Errors
    /// 404 for a number that no season has.
    pub fn ids(self) -> Result<(ClubId, SeasonId, WeekNo), Problem> {
        let week = WeekNo::new(self.week).ok_or_else(|| Problem::wire(WireFault::NotFound))?;
        Ok((ClubId(self.club), SeasonId(self.season), week))
    }
}

/// The page of a club.
pub fn club(club: ClubId) -> String {
    format!("/clubs/{club}")
}

/// Where a member says whether everybody may read their record.
pub fn record_consent(club: ClubId) -> String {
    format!("/clubs/{club}/record-consent")
}

/// The page of a season.
pub fn season(club: ClubId, season: SeasonId) -> String {
    format!("/clubs/{club}/seasons/{season}")
}

/// The page of a week.
pub fn week(club: ClubId, season: SeasonId, week: WeekNo) -> String {
    format!("/clubs/{club}/seasons/{season}/weeks/{}", week.number())
}

/// The page of a game.
pub fn game(club: ClubId, season: SeasonId, game: GameId) -> String {
    format!("/clubs/{club}/seasons/{season}/games/{game}")
}

/// The page of a player.
pub fn player(club: ClubId, season: SeasonId, player: PlayerId) -> String {
    format!("/clubs/{club}/seasons/{season}/players/{player}")
}
