//! The catalogues of a club.

use league::ids::ClubId;
use store::catalogues::Catalogue;

use crate::may::may;
use crate::{Action, Actor, Desk, Refusal};

/// # Errors
/// [`Refusal::NotFound`] to anybody outside the club.
pub async fn list_catalogues(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
) -> Result<Vec<Catalogue>, Refusal> {
    desk.store
        .read(async |conn| {
            may(conn, actor, club, Action::Look).await?;
            Ok(store::catalogues::list(conn, club).await?)
        })
        .await
}
