//! URLs of pages: the same as those of the API, without `/api/v1`.

use league::ids::{ClubId, PlayerId};
use league::keys::{GameKey, SeasonKey, WeekKey};

/// The page of a club.
pub fn club(club: ClubId) -> String {
    format!("/clubs/{club}")
}

/// Where a member says whether everybody may read their record.
pub fn record_consent(club: ClubId) -> String {
    format!("/clubs/{club}/record-consent")
}

/// The page of a season.
pub fn season(season: SeasonKey) -> String {
    format!("/clubs/{}/seasons/{}", season.club, season.season)
}

/// The page of a week.
pub fn week(week: WeekKey) -> String {
    format!("{}/weeks/{}", season(week.season), week.week)
}

/// The page of a game.
pub fn game(game: GameKey) -> String {
    format!("{}/games/{}", season(game.season), game.game)
}

/// The page of a player.
pub fn player(season: SeasonKey, player: PlayerId) -> String {
    format!("{}/players/{player}", self::season(season))
}
