//! Removing a member from a club; their games stay.

use document::trail::TrailAct;
use league::ids::{AccountId, ClubId};
use messages::clubs;
use store::Conn;

use crate::access::authorize;
use crate::season_change::OfficersEntry;
use crate::{Action, Actor, App, Reason, Refusal};

/// Members may leave; owners may remove anybody. Whoever is removed may know a code that still works:
/// all invitations of the club end with that.
///
/// # Errors
/// [`Refusal::NotFound`] when the account is no member; [`Reason::LastOwner`].
pub async fn delete_member(
    app: &App,
    actor: Actor,
    club: ClubId,
    account: AccountId,
) -> Result<(), Refusal> {
    let action = if actor.account == account {
        Action::View
    } else {
        Action::RunClub
    };
    app.write(async |mut tx| {
        authorize(&mut tx, actor, club, action).await?;
        must_keep_an_owner(&mut tx, club, account).await?;
        store::clubs::delete_member(&mut tx, club, account).await?;
        if actor.account != account {
            store::invitations::delete_all(&mut tx, club).await?;
        }
        let now = store::clock::now(&tx).await?;
        let act = TrailAct::DeleteMember { account: account.0 };
        tx.record(OfficersEntry::in_club(club, actor, now, act))
            .await
    })
    .await
}

/// Refuses when `account` is the only owner left.
pub(super) async fn must_keep_an_owner(
    conn: &mut Conn,
    club: ClubId,
    account: AccountId,
) -> Result<(), Refusal> {
    if store::clubs::lock_owners(conn, club).await? == [account] {
        return Err(Refusal::rule(Reason::LastOwner, clubs::last_owner()));
    }
    Ok(())
}
