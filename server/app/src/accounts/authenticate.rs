//! Authentication of access tokens.

use league::ids::AccountId;
use league::time::Instant;
use store::Conn;

use super::token::{self, TokenClaims};
use crate::{Actor, App, Refusal};

/// A genuine token whose session is still to be checked, or an actor who has been authenticated already.
/// For use cases that check the session in the same round trip as everything else they read.
#[derive(Clone, Copy, Debug)]
pub struct UnverifiedSession {
    actor: Actor,
    claims: Option<TokenClaims>,
}

impl From<Actor> for UnverifiedSession {
    fn from(actor: Actor) -> Self {
        Self {
            actor,
            claims: None,
        }
    }
}

impl UnverifiedSession {
    /// # Errors
    /// [`Reason::InvalidToken`](crate::Reason::InvalidToken) unless the token is genuine.
    pub fn from_token(app: &App, access: &str) -> Result<Self, Refusal> {
        let claims = app
            .token_key
            .verify(access)
            .ok_or_else(token::invalid_token)?;
        let actor = Actor {
            account: claims.account,
            session: claims.session,
        };
        let claims = Some(claims);
        Ok(Self { actor, claims })
    }

    /// Who it claims to be. Nothing may be told or done for it before [`UnverifiedSession::verify`].
    pub(crate) fn claimed_account(self) -> AccountId {
        self.actor.account
    }

    /// The actor, if the session is alive at this instant.
    ///
    /// # Errors
    /// [`Reason::InvalidToken`](crate::Reason::InvalidToken): one answer for every kind of bad token.
    pub(crate) async fn verify(self, conn: &Conn) -> Result<Actor, Refusal> {
        match self.claims {
            None => Ok(self.actor),
            Some(_) => {
                self.check_session(store::sessions::find_live(conn, self.actor.session).await)
            }
        }
    }

    fn check_session(
        self,
        found: Result<(AccountId, Instant), store::StoreError>,
    ) -> Result<Actor, Refusal> {
        let (owner, now) = match found {
            Err(store::StoreError::NotFound) => return Err(token::invalid_token()),
            found => found?,
        };
        let is_valid = self.claims.is_none_or(|claims| claims.is_valid_at(now));
        if is_valid && owner == self.actor.account {
            Ok(self.actor)
        } else {
            Err(token::invalid_token())
        }
    }
}

/// The actor of a genuine token whose session is alive at this instant.
///
/// # Errors
/// [`Reason::InvalidToken`](crate::Reason::InvalidToken): one answer for every kind of bad token.
pub async fn authenticate(app: &App, access: &str) -> Result<Actor, Refusal> {
    let unverified = UnverifiedSession::from_token(app, access)?;
    let session = unverified.actor.session;
    let find = async |conn: &mut Conn| store::sessions::find_live(conn, session).await;
    unverified.check_session(app.store.query(find).await)
}
