//! The members of a club, for its members.

use league::ids::ClubId;
use store::clubs::Member;

use crate::access::authorize;
use crate::{Action, Actor, App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] to anybody outside.
pub async fn list_members(app: &App, actor: Actor, club: ClubId) -> Result<Vec<Member>, Refusal> {
    app.store
        .read(async |conn| {
            authorize(conn, actor, club, Action::View).await?;
            Ok(store::clubs::list_members(conn, club).await?)
        })
        .await
}
