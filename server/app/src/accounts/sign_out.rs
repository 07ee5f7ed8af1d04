//! Signing out ends the session at once, whatever tokens are still about.

use crate::{Actor, Desk, Refusal};

/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn sign_out(desk: &Desk, actor: Actor) -> Result<(), Refusal> {
    desk.store
        .write(async |conn| {
            let now = store::clock::now(conn).await?;
            Ok(store::sessions::end(conn, actor.session, now).await?)
        })
        .await
}
