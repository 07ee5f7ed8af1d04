//! Joining a club with a code.

use league::role::Role;
use serde_json::json;
use store::Taken;
use store::clubs::Club;

use crate::record::Scene;
use crate::refusal::when_taken;
use crate::{Actor, Desk, Reason, Refusal, secret};

/// # Errors
/// [`Refusal::NotFound`] for a code that is unknown, used up or out of date;
/// [`Reason::AlreadyMember`], and then no place is used up.
pub async fn accept_invitation(
    desk: &Desk,
    actor: Actor,
    code: &str,
) -> Result<(Club, Role), Refusal> {
    desk.store
        .write(async |conn| {
            let now = store::clock::now(conn).await?;
            let digest = secret::digest(code.trim());
            let (club, role) = store::invitations::take_place(conn, &digest, now).await?;
            let added = store::clubs::create_member(conn, club, actor.account, role, now).await;
            when_taken(added, Taken::Membership, || {
                Refusal::rule(Reason::AlreadyMember, "You belong to this club already.")
            })?;
            Scene::in_club(club, actor, now)
                .tell_officers(conn, "accept_invitation", json!({"role": role.word()}))
                .await?;
            Ok((store::clubs::find(conn, club).await?, role))
        })
        .await
}
