//! Refreshing a session: a new pair of tokens for a refresh token that is good for one use (RFC 9700, section 4.14).

use super::token::{self, Tokens};
use crate::{App, Reason, Refusal, secret};

enum RefreshOutcome {
    Fresh(Tokens),
    Reused,
}

/// Spends a refresh token and issues a new pair.
///
/// # Errors
/// [`Reason::InvalidToken`]; [`Reason::TokenReuse`] when it was spent before: then the whole session
/// is ended, because one of the two who used it has stolen it.
pub async fn refresh_session(app: &App, refresh: &str) -> Result<Tokens, Refusal> {
    let digest = secret::digest(refresh);
    let answer = app
        .store
        .write(async |conn| {
            let found = store::sessions::lock_token(conn, &digest).await;
            let token = match found {
                Err(store::StoreError::NotFound) => return Err(token::invalid_token()),
                other => other?,
            };
            let now = store::clock::now(conn).await?;
            if token.session_ended || token.session.ends_at <= now || token.expires_at <= now {
                return Err(token::invalid_token());
            }
            if token.spent {
                // Committed, not rolled back: the theft must end the session.
                store::sessions::end(conn, token.session.id, now).await?;
                return Ok(RefreshOutcome::Reused);
            }
            store::sessions::spend_token(conn, &digest, now).await?;
            Ok(RefreshOutcome::Fresh(
                app.token_key.issue(conn, token.session, now).await?,
            ))
        })
        .await?;
    match answer {
        RefreshOutcome::Fresh(tokens) => Ok(tokens),
        RefreshOutcome::Reused => Err(Refusal::rule(
            Reason::TokenReuse,
            "This refresh token was used before. The session is ended; sign in again.",
        )),
    }
}
