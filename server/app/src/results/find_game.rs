//! Reading games with their result slips.

use league::ids::{ClubId, GameId, SeasonId};
use league::result::Slip;
use league::week::WeekNo;
use store::games::GameRow;

use crate::access::view_season;
use crate::{App, Refusal, Viewer};

/// The games of a season, or of one week of it.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_games(
    app: &App,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    week: Option<WeekNo>,
) -> Result<Vec<GameRow>, Refusal> {
    app.store
        .read(async |conn| {
            view_season(conn, viewer, club, season).await?;
            let now = store::clock::now(conn).await?;
            let games = store::games::list(conn, club, season, week).await?;
            Ok(games
                .into_iter()
                .map(|game| GameRow {
                    slip: game.slip.settle(now),
                    ..game
                })
                .collect())
        })
        .await
}

/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_game(
    app: &App,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    game: GameId,
) -> Result<GameRow, Refusal> {
    app.store
        .read(async |conn| {
            view_season(conn, viewer, club, season).await?;
            let now = store::clock::now(conn).await?;
            let mut game = store::games::find(conn, club, season, game).await?;
            game.slip = std::mem::replace(&mut game.slip, Slip::Awaited).settle(now);
            Ok(game)
        })
        .await
}
