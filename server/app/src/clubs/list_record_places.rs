//! Where the person behind an open record played.

use league::ids::{ClubId, PlayerId, SeasonId};
use uuid::Uuid;

use crate::{Desk, Refusal};

/// The public seasons of the club, newest first, and which player the person is in each.
///
/// # Errors
/// [`Refusal::NotFound`] for a record that nobody agreed to open, or no longer.
pub async fn list_record_places(
    desk: &Desk,
    club: ClubId,
    record: Uuid,
) -> Result<Vec<(SeasonId, PlayerId)>, Refusal> {
    desk.store
        .read(async |conn| Ok(store::records::list_places(conn, club, record).await?))
        .await
}
