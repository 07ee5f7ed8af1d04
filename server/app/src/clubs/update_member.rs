//! Giving a member another role; it counts from their next request on.

use league::ids::{AccountId, ClubId};
use league::role::Role;
use serde_json::json;

use super::delete_member::keep_an_owner;
use crate::may::may;
use crate::record::Scene;
use crate::{Action, Actor, Desk, Refusal};

/// # Errors
/// [`Refusal::NotFound`] when the account is no member;
/// [`Reason::LastOwner`](crate::Reason::LastOwner).
pub async fn update_member(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    account: AccountId,
    role: Role,
) -> Result<(), Refusal> {
    desk.store
        .write(async |conn| {
            may(conn, actor, club, Action::RunClub).await?;
            if role != Role::Owner {
                keep_an_owner(conn, club, account).await?;
            }
            store::clubs::update_role(conn, club, account, role).await?;
            let now = store::clock::now(conn).await?;
            Scene::in_club(club, actor, now)
                .tell_officers(
                    conn,
                    "update_member",
                    json!({"account": account.0, "role": role.word()}),
                )
                .await
        })
        .await
}
