//! The players of a season.

use league::keys::SeasonKey;
use store::players::Player;

use crate::access::view_season;
use crate::{App, Refusal, Viewer};

/// By handle. Households are blanked except for those who run the season.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_players(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
) -> Result<Vec<Player>, Refusal> {
    app.store
        .read(async |conn| {
            let view = view_season(conn, viewer, season).await?;
            let mut players = store::players::list(conn, season).await?;
            if !view.runs_season() {
                players
                    .iter_mut()
                    .for_each(|player| player.household = None);
            }
            Ok(players)
        })
        .await
}
