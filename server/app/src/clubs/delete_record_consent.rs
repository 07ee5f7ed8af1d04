//! Withdrawing that consent: from the next request on nobody reads the record.

use league::ids::ClubId;
use serde_json::json;

use crate::access::authorize;
use crate::record::Scene;
use crate::{Action, Actor, App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] to anybody outside, and where there is no agreement.
pub async fn delete_record_consent(app: &App, actor: Actor, club: ClubId) -> Result<(), Refusal> {
    app.store
        .write(async |conn| {
            authorize(conn, actor, club, Action::View).await?;
            if !store::record_consents::delete(conn, club, actor.account).await? {
                return Err(Refusal::NotFound);
            }
            let now = store::clock::now(conn).await?;
            Scene::in_club(club, actor, now)
                .tell_officers(conn, "delete_record_consent", json!({}))
                .await
        })
        .await
}
