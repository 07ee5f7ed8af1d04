//! The players of a season.

use league::ids::{ClubId, SeasonId};
use store::players::Player;

use super::look::look;
use crate::{Desk, Refusal, Viewer};

/// By handle. Households are blanked except for those who run the season.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_players(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
) -> Result<Vec<Player>, Refusal> {
    desk.store
        .read(async |conn| {
            let look = look(conn, viewer, club, season).await?;
            let mut players = store::players::list(conn, club, season).await?;
            if !look.runs_season() {
                players
                    .iter_mut()
                    .for_each(|player| player.household = None);
            }
            Ok(players)
        })
        .await
}
