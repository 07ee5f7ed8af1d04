//! Loading a version of a catalogue in the form that the rules need.

use league::catalogue::Catalogue;
use league::ids::{CatalogueId, ClubId};
use store::Conn;

use crate::Refusal;

/// # Errors
/// [`Refusal::NotFound`]; [`Refusal::Internal`] when the stored value can no longer be read.
pub(crate) async fn load_catalogue(
    conn: &Conn,
    club: ClubId,
    id: CatalogueId,
    number: i32,
) -> Result<Catalogue, Refusal> {
    let contents = store::catalogues::find_version(conn, club, id, number).await?;
    Catalogue::try_from(contents)
        .map_err(|faults| Refusal::Internal(format!("catalogue {id} version {number}: {faults:?}")))
}
