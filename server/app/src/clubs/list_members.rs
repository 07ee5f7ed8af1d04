//! The people of a club, for the people of the club.

use league::ids::ClubId;
use store::clubs::Member;

use crate::may::may;
use crate::{Action, Actor, Desk, Refusal};

/// # Errors
/// [`Refusal::NotFound`] to anybody outside.
pub async fn list_members(desk: &Desk, actor: Actor, club: ClubId) -> Result<Vec<Member>, Refusal> {
    desk.store
        .read(async |conn| {
            may(conn, actor, club, Action::Look).await?;
            Ok(store::clubs::list_members(conn, club).await?)
        })
        .await
}
