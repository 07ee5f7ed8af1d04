//! The seasons behind a public record: where the person played.

use league::ids::{ClubId, PlayerId};
use league::keys::SeasonKey;
use uuid::Uuid;

use crate::{App, Refusal};

/// The public seasons of the club, newest first, and which player the person is in each.
///
/// # Errors
/// [`Refusal::NotFound`] for a record that nobody agreed to open, or no longer.
pub async fn list_record_places(
    app: &App,
    club: ClubId,
    record: Uuid,
) -> Result<Vec<(SeasonKey, PlayerId)>, Refusal> {
    app.store
        .read(async |conn| Ok(store::record_consents::list_appearances(conn, club, record).await?))
        .await
}
