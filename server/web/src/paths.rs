//! Path parameters that name a club, or a key within one; API and pages read the same.

use hex::FromHex;
use league::ids::{ClubId, GameId, PlayerId, SeasonId};
use league::keys::{GameKey, SeasonKey, WeekKey};
use league::painting::PhotoDigest;
use league::week::WeekNo;
use serde::Deserialize;
use utoipa::IntoParams;
use uuid::Uuid;

use crate::canonical_number::canonical_number;
use crate::problem::{HttpFault, Problem};

/// A club's address.
#[derive(Clone, Copy, Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct ClubPath {
    /// The club.
    club: Uuid,
}

impl ClubPath {
    pub fn id(self) -> ClubId {
        ClubId(self.club)
    }
}

/// A season's address.
#[derive(Clone, Copy, Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct SeasonPath {
    /// The club.
    club: Uuid,
    /// The season.
    season: Uuid,
}

impl SeasonPath {
    pub fn key(self) -> SeasonKey {
        season_key(self.club, self.season)
    }
}

/// A week's address.
#[derive(Clone, Copy, Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct WeekPath {
    /// The club.
    club: Uuid,
    /// The season.
    season: Uuid,
    /// The week, from 1.
    #[param(minimum = 1, maximum = 52)]
    #[serde(deserialize_with = "canonical_number")]
    week: u8,
}

impl WeekPath {
    /// # Errors
    /// 404 for a number that no season has.
    pub fn key(self) -> Result<WeekKey, Problem> {
        let week = WeekNo::new(self.week).ok_or_else(|| Problem::http(HttpFault::NotFound))?;
        Ok(season_key(self.club, self.season).week(week))
    }
}

/// A game's address.
#[derive(Clone, Copy, Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct GamePath {
    /// The club.
    club: Uuid,
    /// The season.
    season: Uuid,
    /// The game.
    game: Uuid,
}

impl GamePath {
    pub fn key(self) -> GameKey {
        season_key(self.club, self.season).game(GameId(self.game))
    }
}

/// A player's address.
#[derive(Clone, Copy, Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct PlayerPath {
    /// The club.
    club: Uuid,
    /// The season.
    season: Uuid,
    /// The player.
    player: Uuid,
}

impl PlayerPath {
    pub fn ids(self) -> (SeasonKey, PlayerId) {
        let season = season_key(self.club, self.season);
        (season, PlayerId(self.player))
    }
}

/// A photo's address.
#[derive(Clone, Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct PhotoPath {
    /// The club.
    club: Uuid,
    /// The season.
    season: Uuid,
    /// The photo: 64 hexadecimal digits.
    photo: String,
}

impl PhotoPath {
    /// # Errors
    /// 404 for what cannot be a photo's name.
    pub fn ids(&self) -> Result<(SeasonKey, PhotoDigest), Problem> {
        let photo = photo_digest(&self.photo).ok_or_else(|| Problem::http(HttpFault::NotFound))?;
        Ok((season_key(self.club, self.season), photo))
    }
}

/// The digest that a photo's name spells.
pub fn photo_digest(name: &str) -> Option<PhotoDigest> {
    <[u8; _]>::from_hex(name).ok().map(PhotoDigest)
}

/// The key of the season that an address begins with.
pub fn season_key(club: Uuid, season: Uuid) -> SeasonKey {
    SeasonKey {
        club: ClubId(club),
        season: SeasonId(season),
    }
}
