//! Changing the role of a member, from their next request on.

use league::club_role::ClubRole;
use league::ids::{AccountId, ClubId};
use serde_json::json;

use super::delete_member::must_keep_an_owner;
use crate::access::authorize;
use crate::record::Scene;
use crate::{Action, Actor, App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] when the account is no member;
/// [`Reason::LastOwner`](crate::Reason::LastOwner).
pub async fn update_member(
    app: &App,
    actor: Actor,
    club: ClubId,
    account: AccountId,
    role: ClubRole,
) -> Result<(), Refusal> {
    app.store
        .write(async |conn| {
            authorize(conn, actor, club, Action::RunClub).await?;
            if role != ClubRole::Owner {
                must_keep_an_owner(conn, club, account).await?;
            }
            store::clubs::update_role(conn, club, account, role).await?;
            let now = store::clock::now(conn).await?;
            Scene::in_club(club, actor, now)
                .tell_officers(
                    conn,
                    "update_member",
                    json!({"account": account.0, "role": role.as_str()}),
                )
                .await
        })
        .await
}
