//! Games with their slips.

use league::ids::{ClubId, GameId, SeasonId};
use league::result::Slip;
use league::week::WeekNo;
use store::games::Game;

use crate::seasons::look::look;
use crate::{Desk, Refusal, Viewer};

/// The games of a season, or of one week of it.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_games(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    week: Option<WeekNo>,
) -> Result<Vec<Game>, Refusal> {
    desk.store
        .read(async |conn| {
            look(conn, viewer, club, season).await?;
            let now = store::clock::now(conn).await?;
            let games = store::games::list(conn, club, season, week).await?;
            Ok(games
                .into_iter()
                .map(|game| Game {
                    slip: game.slip.settle(now),
                    ..game
                })
                .collect())
        })
        .await
}

/// One game.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_game(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    game: GameId,
) -> Result<Game, Refusal> {
    desk.store
        .read(async |conn| {
            look(conn, viewer, club, season).await?;
            let now = store::clock::now(conn).await?;
            let mut game = store::games::find(conn, club, season, game).await?;
            game.slip = std::mem::replace(&mut game.slip, Slip::Awaited).settle(now);
            Ok(game)
        })
        .await
}
