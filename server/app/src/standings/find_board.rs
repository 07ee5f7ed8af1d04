//! Loading the board of a season.

use futures_util::TryFutureExt;
use futures_util::future::try_join;
use league::keys::SeasonKey;

use super::Board;
use crate::access::view_season;
use crate::load_season::load_season;
use crate::{App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] for a season that is not open to everybody.
pub async fn find_board(app: &App, season: SeasonKey) -> Result<Board, Refusal> {
    app.store
        .read(async |conn| {
            let view = view_season(conn, None, season).await?;
            let now = store::clock::now(conn).await?;
            let loaded = load_season(conn, app, &view.season, now);
            let frozen = store::frozen_tables::list(conn, season).err_into();
            let (loaded, frozen) = try_join(loaded, frozen).await?;
            Ok(Board::new(view, loaded, frozen))
        })
        .await
}
