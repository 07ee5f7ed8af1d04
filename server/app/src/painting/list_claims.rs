//! The painting log of a season.

use league::ids::{ClubId, PlayerId, SeasonId};
use league::painting::Claim;

use crate::seasons::look::look;
use crate::{Desk, Refusal, Viewer};

/// Every claim, or those of one player, in the order in which they were made.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_claims(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    player: Option<PlayerId>,
) -> Result<Vec<Claim>, Refusal> {
    desk.store
        .read(async |conn| {
            look(conn, viewer, club, season).await?;
            Ok(store::painting::list(conn, club, season, player).await?)
        })
        .await
}
