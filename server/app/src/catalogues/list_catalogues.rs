//! The catalogues of a club.

use league::ids::ClubId;
use store::catalogues::CatalogueRow;

use crate::access::authorize;
use crate::{Action, Actor, App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] to anybody outside the club.
pub async fn list_catalogues(
    app: &App,
    actor: Actor,
    club: ClubId,
) -> Result<Vec<CatalogueRow>, Refusal> {
    app.store
        .read(async |conn| {
            authorize(conn, actor, club, Action::View).await?;
            Ok(store::catalogues::list(conn, club).await?)
        })
        .await
}
