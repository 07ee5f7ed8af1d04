//! Revoking an invitation: its code no longer works.

use document::trail::TrailAct;
use league::ids::ClubId;
use uuid::Uuid;

use crate::access::authorize;
use crate::season_change::OfficersEntry;
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
    app.write(async |mut tx| {
        authorize(&mut tx, actor, club, Action::Invite).await?;
        store::invitations::delete(&mut tx, club, invitation).await?;
        let now = store::clock::now(&tx).await?;
        let act = TrailAct::DeleteInvitation { invitation };
        tx.record(OfficersEntry::in_club(club, actor, now, act))
            .await
    })
    .await
}
