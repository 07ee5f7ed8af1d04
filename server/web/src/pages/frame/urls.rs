//! URLs of pages: the same as those of the API, without `/api/v1`.

use league::ids::{ClubId, GameId, PlayerId, SeasonId};
use league::week::WeekNo;

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
