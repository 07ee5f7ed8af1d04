//! Taking one's agreement back: from the next request on nobody reads the record.

use league::ids::ClubId;
use serde_json::json;

use crate::may::may;
use crate::record::Scene;
use crate::{Action, Actor, Desk, Refusal};

/// # Errors
/// [`Refusal::NotFound`] to anybody outside, and where there is no agreement.
pub async fn delete_record_consent(desk: &Desk, actor: Actor, club: ClubId) -> Result<(), Refusal> {
    desk.store
        .write(async |conn| {
            may(conn, actor, club, Action::Look).await?;
            if !store::records::delete(conn, club, actor.account).await? {
                return Err(Refusal::NotFound);
            }
            let now = store::clock::now(conn).await?;
            Scene::in_club(club, actor, now)
                .tell_officers(conn, "delete_record_consent", json!({}))
                .await
        })
        .await
}
