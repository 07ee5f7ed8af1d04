//! The contents of a catalogue version.

use document::catalogue::CatalogueDocument;
use league::ids::{CatalogueId, ClubId};

use crate::access::authorize;
use crate::{Action, Actor, App, Refusal};

/// The contents of version `number`, for members of the club.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_catalogue_version(
    app: &App,
    actor: Actor,
    club: ClubId,
    id: CatalogueId,
    number: i32,
) -> Result<CatalogueDocument, Refusal> {
    app.store
        .read(async |conn| {
            authorize(conn, actor, club, Action::View).await?;
            Ok(store::catalogues::find_version(conn, club, id, number).await?)
        })
        .await
}
