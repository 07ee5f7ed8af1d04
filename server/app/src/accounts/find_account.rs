//! What an account knows of itself.

use league::role::Role;
use store::accounts::Account;
use store::clubs::Club;

use crate::{Actor, Desk, Refusal};

/// An account with its clubs.
#[derive(Clone, Debug)]
pub struct AccountOverview {
    /// The account.
    pub account: Account,
    /// Its clubs, by name, with its role in each.
    pub clubs: Vec<(Club, Role)>,
}

/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn find_account(desk: &Desk, actor: Actor) -> Result<AccountOverview, Refusal> {
    desk.store
        .read(async |conn| {
            let account = store::accounts::find(conn, actor.account).await?;
            let clubs = store::clubs::list_of(conn, actor.account).await?;
            Ok(AccountOverview { account, clubs })
        })
        .await
}
