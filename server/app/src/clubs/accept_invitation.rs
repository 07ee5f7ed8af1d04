//! Accepting an invitation: joining a club with its code.

use document::trail::TrailAct;
use league::club_role::ClubRole;
use messages::clubs;
use store::UniqueConstraint;
use store::clubs::Club;

use crate::refusal::map_unique_violation;
use crate::season_change::OfficersEntry;
use crate::{Actor, App, Reason, Refusal, secret};

/// # Errors
/// [`Refusal::NotFound`] for a code that is unknown, used up or out of date;
/// [`Reason::AlreadyMember`], and then no place is used up.
pub async fn accept_invitation(
    app: &App,
    actor: Actor,
    code: &str,
) -> Result<(Club, ClubRole), Refusal> {
    app.write(async |mut tx| {
        let now = store::clock::now(&tx).await?;
        let digest = secret::digest(code.trim());
        let (club, role) = store::invitations::redeem(&mut tx, &digest, now).await?;
        let added = store::clubs::create_member(&mut tx, club, actor.account, role, now).await;
        map_unique_violation(added, UniqueConstraint::Membership, || {
            Refusal::rule(Reason::AlreadyMember, clubs::already_member())
        })?;
        let found = store::clubs::find(&mut tx, club).await?;
        let act = TrailAct::AcceptInvitation { role: role.into() };
        Ok(tx
            .record(OfficersEntry::in_club(club, actor, now, act))
            .await?
            .with((found, role)))
    })
    .await
}
