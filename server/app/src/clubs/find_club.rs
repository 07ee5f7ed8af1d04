//! One club, with the viewer's role in it.

use league::club_role::ClubRole;
use league::ids::ClubId;
use store::clubs::Club;

use crate::access::role_of;
use crate::{App, Refusal, Viewer};

/// The club, and what the viewer is in it.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_club(
    app: &App,
    viewer: Viewer,
    club: ClubId,
) -> Result<(Club, Option<ClubRole>), Refusal> {
    app.store
        .read(async |conn| {
            Ok((
                store::clubs::find(conn, club).await?,
                role_of(conn, viewer, club).await?,
            ))
        })
        .await
}
