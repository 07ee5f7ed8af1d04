//! A season, to whoever may know of it.

use league::ids::{ClubId, SeasonId};
use store::seasons::Season;

use super::look::look;
use crate::{Desk, Refusal, Viewer};

/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_season(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    id: SeasonId,
) -> Result<Season, Refusal> {
    desk.store
        .read(async |conn| Ok(look(conn, viewer, club, id).await?.season))
        .await
}
