//! Revoking an invitation: its code no longer works.

use league::ids::ClubId;
use serde_json::json;
use uuid::Uuid;

use crate::access::authorize;
use crate::record::Scene;
use crate::{Action, Actor, App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] for an invitation that the club does not have;
/// [`Reason::Forbidden`](crate::Reason::Forbidden).
pub async fn delete_invitation(
    app: &App,
    actor: Actor,
    club: ClubId,
    invitation: Uuid,
) -> Result<(), Refusal> {
    app.store
        .write(async |conn| {
            authorize(conn, actor, club, Action::Invite).await?;
            store::invitations::delete(conn, club, invitation).await?;
            let now = store::clock::now(conn).await?;
            Scene::in_club(club, actor, now)
                .tell_officers(conn, "delete_invitation", json!({"invitation": invitation}))
                .await
        })
        .await
}
