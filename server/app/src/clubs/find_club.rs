//! A club's public face.

use league::ids::ClubId;
use league::role::Role;
use store::clubs::Club;

use crate::may::standing;
use crate::{Desk, Refusal, Viewer};

/// The club, and what the viewer is in it.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_club(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
) -> Result<(Club, Option<Role>), Refusal> {
    desk.store
        .read(async |conn| {
            Ok((
                store::clubs::find(conn, club).await?,
                standing(conn, viewer, club).await?,
            ))
        })
        .await
}
