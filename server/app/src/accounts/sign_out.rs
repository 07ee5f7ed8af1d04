//! Signing out ends the session at once, whatever tokens are still about.

use crate::{Actor, App, Refusal};

/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn sign_out(app: &App, actor: Actor) -> Result<(), Refusal> {
    app.write(async |mut tx| {
        let now = store::clock::now(&tx).await?;
        store::sessions::end(&mut tx, actor.session, now).await?;
        Ok(tx.commit(()))
    })
    .await
}
