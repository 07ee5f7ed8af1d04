//! Consent of a member that everybody may read their record over the club's public seasons.

use document::trail::TrailAct;
use league::ids::ClubId;
use messages::clubs;
use store::record_consents::RecordConsent;
use uuid::Uuid;

use crate::access::authorize;
use crate::season_change::OfficersEntry;
use crate::{Action, Actor, App, Reason, Refusal};

/// Each season's table tells the same already; the record ties the names of one person together.
/// Agreeing twice changes nothing.
///
/// # Errors
/// [`Refusal::NotFound`] to anybody outside, [`Reason::Forbidden`] for a minor.
pub async fn create_record_consent(
    app: &App,
    actor: Actor,
    club: ClubId,
) -> Result<RecordConsent, Refusal> {
    app.write(async |mut tx| {
        authorize(&mut tx, actor, club, Action::View).await?;
        if store::accounts::find(&mut tx, actor.account).await?.minor {
            let message = clubs::minor_record();
            return Err(Refusal::rule(Reason::Forbidden, message));
        }
        if let Some(open) = store::record_consents::find(&mut tx, club, actor.account).await? {
            return Ok(tx.commit(open));
        }
        let now = store::clock::now(&tx).await?;
        // A random UUID: unlike a time-ordered one it does not even tell when it was made.
        let open = RecordConsent {
            record: Uuid::new_v4(),
            agreed_at: now,
        };
        store::record_consents::create(&mut tx, club, actor.account, open).await?;
        let act = TrailAct::CreateRecordConsent {};
        Ok(tx
            .record(OfficersEntry::in_club(club, actor, now, act))
            .await?
            .with(open))
    })
    .await
}
