//! The invitations of a club that still work, without their codes.

use league::ids::ClubId;
use store::invitations::Invitation;

use crate::access::authorize;
use crate::{Action, Actor, App, Refusal};

/// The one that ends first comes first.
///
/// # Errors
/// [`Refusal::NotFound`] to anybody outside; [`Reason::Forbidden`](crate::Reason::Forbidden).
pub async fn list_invitations(
    app: &App,
    actor: Actor,
    club: ClubId,
) -> Result<Vec<Invitation>, Refusal> {
    app.store
        .read(async |conn| {
            authorize(conn, actor, club, Action::Invite).await?;
            let now = store::clock::now(conn).await?;
            Ok(store::invitations::list_open(conn, club, now).await?)
        })
        .await
}
