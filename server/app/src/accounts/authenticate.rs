//! From an access token to the person behind it.

use league::ids::AccountId;
use league::time::Instant;
use store::Conn;

use super::token::{self, Claim};
use crate::{Actor, Desk, Refusal};

/// Whoever shows a genuine token, whose session is still to be looked at; or an actor, who has nothing
/// to prove any more. For use cases that look at the session together with all else.
#[derive(Clone, Copy, Debug)]
pub struct Claimant {
    actor: Actor,
    open: Option<Claim>,
}

impl From<Actor> for Claimant {
    fn from(actor: Actor) -> Self {
        Self { actor, open: None }
    }
}

impl Claimant {
    /// # Errors
    /// [`Reason::InvalidToken`](crate::Reason::InvalidToken) unless the token is genuine.
    pub fn read(desk: &Desk, access: &str) -> Result<Self, Refusal> {
        let claim = desk.key.check(access).ok_or_else(token::invalid)?;
        let actor = Actor {
            account: claim.account,
            session: claim.session,
        };
        let open = Some(claim);
        Ok(Self { actor, open })
    }

    /// Who it claims to be. Nothing may be told or done for it before [`Claimant::prove`].
    pub(crate) fn account(self) -> AccountId {
        self.actor.account
    }

    /// The actor, if the session is alive at this instant.
    ///
    /// # Errors
    /// [`Reason::InvalidToken`](crate::Reason::InvalidToken): one answer for every kind of bad token.
    pub(crate) async fn prove(self, conn: &Conn) -> Result<Actor, Refusal> {
        match self.open {
            None => Ok(self.actor),
            Some(_) => self.judge(store::sessions::find_live(conn, self.actor.session).await),
        }
    }

    fn judge(self, found: Result<(AccountId, Instant), store::Fault>) -> Result<Actor, Refusal> {
        let (owner, now) = match found {
            Err(store::Fault::NotFound) => return Err(token::invalid()),
            found => found?,
        };
        let is_in_date = self.open.is_none_or(|claim| claim.is_in_date(now));
        if is_in_date && owner == self.actor.account {
            Ok(self.actor)
        } else {
            Err(token::invalid())
        }
    }
}

/// The actor of a genuine token whose session is alive at this instant.
///
/// # Errors
/// [`Reason::InvalidToken`](crate::Reason::InvalidToken): one answer for every kind of bad token.
pub async fn authenticate(desk: &Desk, access: &str) -> Result<Actor, Refusal> {
    let claimant = Claimant::read(desk, access)?;
    let session = claimant.actor.session;
    let find = async |conn: &mut Conn| store::sessions::find_live(conn, session).await;
    claimant.judge(desk.store.ask(find).await)
}
