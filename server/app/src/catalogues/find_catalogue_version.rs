//! A version of a catalogue. What may be fielded is no secret of a club's players.

use document::catalogue::CatalogueDocument;
use league::catalogue::Catalogue;
use league::ids::{CatalogueId, ClubId};
use store::Conn;

use crate::may::may;
use crate::{Action, Actor, Desk, Refusal};

/// The contents of version `number`, for members of the club.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn find_catalogue_version(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    id: CatalogueId,
    number: i32,
) -> Result<CatalogueDocument, Refusal> {
    desk.store
        .read(async |conn| {
            may(conn, actor, club, Action::Look).await?;
            Ok(store::catalogues::find_version(conn, club, id, number).await?)
        })
        .await
}

/// A version as the rules need it.
///
/// # Errors
/// [`Refusal::NotFound`]; [`Refusal::Broken`] when what was kept can no longer be read.
pub async fn load(
    conn: &Conn,
    club: ClubId,
    id: CatalogueId,
    number: i32,
) -> Result<Catalogue, Refusal> {
    let contents = store::catalogues::find_version(conn, club, id, number).await?;
    Catalogue::try_from(contents)
        .map_err(|faults| Refusal::Broken(format!("catalogue {id} version {number}: {faults:?}")))
}
