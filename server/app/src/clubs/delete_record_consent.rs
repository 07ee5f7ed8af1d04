//! Withdrawing that consent: from the next request on nobody reads the record.

use document::trail::TrailAct;
use league::ids::ClubId;

use crate::access::authorize;
use crate::season_change::OfficersEntry;
use crate::{Action, Actor, App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] to anybody outside, and where there is no agreement.
pub async fn delete_record_consent(app: &App, actor: Actor, club: ClubId) -> Result<(), Refusal> {
    app.write(async |mut tx| {
        authorize(&mut tx, actor, club, Action::View).await?;
        if !store::record_consents::delete(&mut tx, club, actor.account).await? {
            return Err(Refusal::NotFound);
        }
        let now = store::clock::now(&tx).await?;
        let act = TrailAct::DeleteRecordConsent {};
        tx.record(OfficersEntry::in_club(club, actor, now, act))
            .await
    })
    .await
}
