//! Accepting an invitation: joining a club with its code.

use league::club_role::ClubRole;
use serde_json::json;
use store::UniqueConstraint;
use store::clubs::Club;

use crate::record::Scene;
use crate::refusal::map_unique_violation;
use crate::{Actor, App, Reason, Refusal, secret};

/// # Errors
/// [`Refusal::NotFound`] for a code that is unknown, used up or out of date;
/// [`Reason::AlreadyMember`], and then no place is used up.
pub async fn accept_invitation(
    app: &App,
    actor: Actor,
    code: &str,
) -> Result<(Club, ClubRole), Refusal> {
    app.store
        .write(async |conn| {
            let now = store::clock::now(conn).await?;
            let digest = secret::digest(code.trim());
            let (club, role) = store::invitations::redeem(conn, &digest, now).await?;
            let added = store::clubs::create_member(conn, club, actor.account, role, now).await;
            map_unique_violation(added, UniqueConstraint::Membership, || {
                Refusal::rule(Reason::AlreadyMember, "You belong to this club already.")
            })?;
            Scene::in_club(club, actor, now)
                .tell_officers(conn, "accept_invitation", json!({"role": role.as_str()}))
                .await?;
            Ok((store::clubs::find(conn, club).await?, role))
        })
        .await
}
