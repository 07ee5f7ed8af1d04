//! Reading games with their result slips.

use league::keys::{GameKey, SeasonKey};
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
    season: SeasonKey,
    week: Option<WeekNo>,
) -> Result<Vec<GameRow>, Refusal> {
    app.store
        .read(async |conn| {
            view_season(conn, viewer, season).await?;
            let now = store::clock::now(conn).await?;
            let games = store::games::list(conn, season, week).await?;
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
pub async fn find_game(app: &App, viewer: Viewer, game: GameKey) -> Result<GameRow, Refusal> {
    app.store
        .read(async |conn| {
            view_season(conn, viewer, game.season).await?;
            let now = store::clock::now(conn).await?;
            let mut game = store::games::find(conn, game).await?;
            game.slip = std::mem::replace(&mut game.slip, Slip::Awaited).settle(now);
            Ok(game)
        })
        .await
}
