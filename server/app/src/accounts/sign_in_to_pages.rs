//! Signing in with a browser: its cookie holds an opaque secret, of which only the digest is kept.

use league::time::Instant;

use super::sign_in::{SignIn, new_session, verify_credentials};
use crate::{Actor, App, Refusal, secret};

/// What a browser keeps.
#[derive(Clone, Debug)]
pub struct PageSession {
    /// 256 random bits as 64 hexadecimal digits.
    pub secret: String,
    /// When it runs out whatever happens.
    pub ends_at: Instant,
}

/// Opens a session for a browser.
///
/// # Errors
/// As [`sign_in`](super::sign_in).
pub async fn sign_in_to_pages(app: &App, command: SignIn) -> Result<PageSession, Refusal> {
    let account = verify_credentials(app, command).await?;
    let secret = secret::random_hex()?;
    let digest = secret::digest(&secret);
    app.write(async |mut tx| {
        let now = store::clock::now(&tx).await?;
        let session = new_session(account, now);
        store::sessions::create_for_pages(&mut tx, session, &digest, now).await?;
        Ok(tx.commit(PageSession {
            secret: secret.clone(),
            ends_at: session.ends_at,
        }))
    })
    .await
}

/// The person behind a cookie, if its session is alive at this instant.
///
/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn authenticate_page(app: &App, secret: &str) -> Result<Option<Actor>, Refusal> {
    let digest = secret::digest(secret);
    let found = app
        .store
        .query(async |conn| store::sessions::find_live_by_page_digest(conn, &digest).await)
        .await;
    match found {
        Ok(session) => Ok(Some(Actor {
            account: session.account,
            session: session.id,
        })),
        Err(store::StoreError::NotFound) => Ok(None),
        Err(fault) => Err(fault.into()),
    }
}
