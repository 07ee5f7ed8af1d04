//! From an access token to the person behind it.

use super::token;
use crate::{Actor, Desk, Refusal};

/// The actor of a genuine token whose session is alive at this instant.
///
/// # Errors
/// [`Reason::InvalidToken`](crate::Reason::InvalidToken): one answer for every kind of bad token.
pub async fn authenticate(desk: &Desk, access: &str) -> Result<Actor, Refusal> {
    let claim = desk.key.check(access).ok_or_else(token::invalid)?;
    let found = desk
        .store
        .ask(async |conn| store::sessions::find_live(conn, claim.session).await)
        .await;
    let (owner, now) = match found {
        Err(store::Fault::NotFound) => return Err(token::invalid()),
        found => found?,
    };
    if claim.is_in_date(now) && owner == claim.account {
        Ok(Actor {
            account: claim.account,
            session: claim.session,
        })
    } else {
        Err(token::invalid())
    }
}
