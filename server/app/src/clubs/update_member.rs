//! Changing the role of a member, from their next request on.

use document::trail::TrailAct;
use league::club_role::ClubRole;
use league::ids::{AccountId, ClubId};

use super::delete_member::must_keep_an_owner;
use crate::access::authorize;
use crate::season_change::OfficersEntry;
use crate::{Action, Actor, App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] when the account is no member;
/// [`Reason::LastOwner`](crate::Reason::LastOwner).
pub async fn update_member(
    app: &App,
    actor: Actor,
    club: ClubId,
    account: AccountId,
    role: ClubRole,
) -> Result<(), Refusal> {
    app.write(async |mut tx| {
        authorize(&mut tx, actor, club, Action::RunClub).await?;
        if role != ClubRole::Owner {
            must_keep_an_owner(&mut tx, club, account).await?;
        }
        store::clubs::update_role(&mut tx, club, account, role).await?;
        let now = store::clock::now(&tx).await?;
        let act = TrailAct::UpdateMember {
            account: account.0,
            role: role.into(),
        };
        tx.record(OfficersEntry::in_club(club, actor, now, act))
            .await
    })
    .await
}
