//! Signing out ends the session at once, whatever tokens are still about.

use crate::{Actor, App, Refusal};

/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn sign_out(app: &App, actor: Actor) -> Result<(), Refusal> {
    app.store
        .write(async |conn| {
            let now = store::clock::now(conn).await?;
            Ok(store::sessions::end(conn, actor.session, now).await?)
        })
        .await
}
