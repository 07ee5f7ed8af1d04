//! From an access token to the person behind it.

use super::token;
use crate::{Actor, Desk, Refusal};

/// The actor of a genuine token whose session is alive at this instant.
///
/// # Errors
/// [`Reason::InvalidToken`](crate::Reason::InvalidToken): one answer for every kind of bad token.
pub async fn authenticate(desk: &Desk, access: &str) -> Result<Actor, Refusal> {
    desk.store
        .read(async |conn| {
            let now = store::clock::now(conn).await?;
            let (account, session) = desk.key.check(access, now).ok_or_else(token::invalid)?;
            match store::sessions::find_live(conn, session, now).await {
                Ok(owner) if owner == account => Ok(Actor { account, session }),
                Ok(_) | Err(store::Fault::NotFound) => Err(token::invalid()),
                Err(fault) => Err(fault.into()),
            }
        })
        .await
}
