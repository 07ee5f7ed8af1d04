//! The next pair of tokens for the last refresh token (RFC 9700, section 4.14).

use super::token::{self, Tokens};
use crate::{Desk, Reason, Refusal, secret};

enum Answer {
    Fresh(Tokens),
    Reused,
}

/// Spends a refresh token and issues a new pair.
///
/// # Errors
/// [`Reason::InvalidToken`]; [`Reason::TokenReuse`] when it was spent before: then the whole session
/// is ended, because one of the two who used it has stolen it.
pub async fn refresh_session(desk: &Desk, refresh: &str) -> Result<Tokens, Refusal> {
    let digest = secret::digest(refresh);
    let answer = desk
        .store
        .write(async |conn| {
            let found = store::sessions::lock_token(conn, &digest).await;
            let token = match found {
                Err(store::Fault::NotFound) => return Err(token::invalid()),
                other => other?,
            };
            let now = store::clock::now(conn).await?;
            if token.session_ended || token.session.ends_at <= now || token.expires_at <= now {
                return Err(token::invalid());
            }
            if token.spent {
                // Committed, not rolled back: the theft must end the session.
                store::sessions::end(conn, token.session.id, now).await?;
                return Ok(Answer::Reused);
            }
            store::sessions::spend_token(conn, &digest, now).await?;
            Ok(Answer::Fresh(
                desk.key.issue(conn, token.session, now).await?,
            ))
        })
        .await?;
    match answer {
        Answer::Fresh(tokens) => Ok(tokens),
        Answer::Reused => Err(Refusal::rule(
            Reason::TokenReuse,
            "This refresh token was used before. The session is ended; sign in again.",
        )),
    }
}
