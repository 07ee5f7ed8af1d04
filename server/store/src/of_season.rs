//! Query filters by season, which most queries begin with.

/// The rows of one season in a table that has both keys.
macro_rules! of_season {
    ($table:ident, $club:expr, $season:expr) => {
        $table::club_id
            .eq($club.0)
            .and($table::season_id.eq($season.0))
    };
}

/// A query for the rows of one season, or of one player in it.
macro_rules! of_season_or_player {
    ($table:ident, $club:expr, $season:expr, $player:expr) => {{
        let query = $table::table
            .filter($crate::of_season::of_season!($table, $club, $season))
            .into_boxed();
        match $player {
            Some(player) => query.filter($table::player_id.eq(player.0)),
            None => query,
        }
    }};
}

pub(crate) use {of_season, of_season_or_player};
