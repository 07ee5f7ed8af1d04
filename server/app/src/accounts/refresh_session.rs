//! Refreshing a session: a new pair of tokens for a refresh token that is good for one use (RFC 9700, section 4.14).

use super::token::{self, Tokens};
use crate::{App, Reason, Refusal, secret};
use messages::accounts;

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
        .write(async |mut tx| {
            let found = store::sessions::lock_token(&mut tx, &digest).await;
            let token = match found {
                Err(store::StoreError::NotFound) => return Err(token::invalid_token()),
                other => other?,
            };
            let now = store::clock::now(&tx).await?;
            if token.session_ended || token.session.ends_at <= now || token.expires_at <= now {
                return Err(token::invalid_token());
            }
            if token.spent {
                // Committed, not rolled back: the theft must end the session.
                store::sessions::end(&mut tx, token.session.id, now).await?;
                return Ok(tx.commit(RefreshOutcome::Reused));
            }
            store::sessions::spend_token(&mut tx, &digest, now).await?;
            let tokens = app.token_key.issue(&mut tx, token.session, now).await?;
            Ok(tx.commit(RefreshOutcome::Fresh(tokens)))
        })
        .await?;
    match answer {
        RefreshOutcome::Fresh(tokens) => Ok(tokens),
        RefreshOutcome::Reused => Err(Refusal::rule(Reason::TokenReuse, accounts::token_reused())),
    }
}
