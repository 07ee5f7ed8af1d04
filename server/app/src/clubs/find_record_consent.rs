//! A member's own consent to a public record.

use league::ids::ClubId;
pub use store::record_consents::RecordConsent;

use crate::access::authorize;
use crate::{Action, Actor, App, Refusal};

/// The member's own agreement, if there is one.
///
/// # Errors
/// [`Refusal::NotFound`] to anybody outside.
pub async fn find_record_consent(
    app: &App,
    actor: Actor,
    club: ClubId,
) -> Result<Option<RecordConsent>, Refusal> {
    app.store
        .read(async |conn| {
            authorize(conn, actor, club, Action::View).await?;
            Ok(store::record_consents::find(conn, club, actor.account).await?)
        })
        .await
}
