//! An account's own data and clubs.

use league::club_role::ClubRole;
use store::accounts::Account;
use store::clubs::Club;

use crate::{Actor, App, Refusal};

/// An account with its clubs.
#[derive(Clone, Debug)]
pub struct AccountOverview {
    pub account: Account,
    /// Its clubs, by name, with its role in each.
    pub clubs: Vec<(Club, ClubRole)>,
}

/// # Errors
/// [`Refusal::Unavailable`] when the database cannot be reached.
pub async fn find_account(app: &App, actor: Actor) -> Result<AccountOverview, Refusal> {
    app.store
        .read(async |conn| {
            let account = store::accounts::find(conn, actor.account).await?;
            let clubs = store::clubs::list_by_account(conn, actor.account).await?;
            Ok(AccountOverview { account, clubs })
        })
        .await
}
