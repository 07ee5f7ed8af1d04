//! How keys are bound in queries: the one place of the store that takes them apart.

use league::ids::{ClubId, SeasonId};
use league::keys::{GameKey, SeasonKey, WeekKey};
use uuid::Uuid;

use crate::week_no::week_to_sql;

/// The rows of one season in a table that has both keys.
macro_rules! of_season {
    ($table:ident, $season:expr) => {{
        let (club, season) = $crate::keys::season_pk($season);
        $table::club_id.eq(club).and($table::season_id.eq(season))
    }};
}

/// The rows of one week of a season.
macro_rules! of_week {
    ($table:ident, $week:expr) => {{
        let (club, season, week) = $crate::keys::week_pk($week);
        $table::club_id
            .eq(club)
            .and($table::season_id.eq(season))
            .and($table::week_no.eq(week))
    }};
}

/// A query for the rows of one season, or of one player in it.
macro_rules! of_season_or_player {
    ($table:ident, $season:expr, $player:expr) => {{
        let query = $table::table
            .filter($crate::keys::of_season!($table, $season))
            .into_boxed();
        match $player {
            Some(player) => query.filter($table::player_id.eq(player.0)),
            None => query,
        }
    }};
}

/// The columns of a new row that say of which season it is.
macro_rules! season_columns {
    ($table:ident, $season:expr) => {{
        let (club, season) = $crate::keys::season_pk($season);
        ($table::club_id.eq(club), $table::season_id.eq(season))
    }};
}

/// The columns of a new row that say of which week it is.
macro_rules! week_columns {
    ($table:ident, $week:expr) => {{
        let (club, season, week) = $crate::keys::week_pk($week);
        (
            $table::club_id.eq(club),
            $table::season_id.eq(season),
            $table::week_no.eq(week),
        )
    }};
}

pub(crate) use {of_season, of_season_or_player, of_week, season_columns, week_columns};

/// The primary key of a season.
pub(crate) fn season_pk(season: SeasonKey) -> (Uuid, Uuid) {
    (season.club.0, season.season.0)
}

/// The season that a primary key is of.
pub(crate) fn season_from_pk((club, season): (Uuid, Uuid)) -> SeasonKey {
    SeasonKey {
        club: ClubId(club),
        season: SeasonId(season),
    }
}

/// The primary key of a week.
pub(crate) fn week_pk(week: WeekKey) -> (Uuid, Uuid, i16) {
    let (club, season) = season_pk(week.season);
    (club, season, week_to_sql(week.week))
}

/// The primary key of a game, and of its slip.
pub(crate) fn game_pk(game: GameKey) -> (Uuid, Uuid, Uuid) {
    pk_in_season(game.season, game.game.0)
}

/// The primary key of what has an id of its own within a season.
pub(crate) fn pk_in_season(season: SeasonKey, id: Uuid) -> (Uuid, Uuid, Uuid) {
    let (club, season) = season_pk(season);
    (club, season, id)
}

/// The primary key of what a player has once in each week.
pub(crate) fn pk_in_week(week: WeekKey, player: Uuid) -> (Uuid, Uuid, i16, Uuid) {
    let (club, season, week) = week_pk(week);
    (club, season, week, player)
}
