//! Whether a member lets everybody read their record over the club's seasons.

use league::ids::ClubId;
pub use store::records::OpenRecord;

use crate::may::may;
use crate::{Action, Actor, Desk, Refusal};

/// The member's own agreement, if there is one.
///
/// # Errors
/// [`Refusal::NotFound`] to anybody outside.
pub async fn find_record_consent(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
) -> Result<Option<OpenRecord>, Refusal> {
    desk.store
        .read(async |conn| {
            may(conn, actor, club, Action::Look).await?;
            Ok(store::records::find(conn, club, actor.account).await?)
        })
        .await
}
