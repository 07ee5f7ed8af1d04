//! Agreeing that everybody reads one's record over the club's public seasons.

use league::ids::ClubId;
use serde_json::json;
use store::records::OpenRecord;
use uuid::Uuid;

use crate::may::may;
use crate::record::Scene;
use crate::{Action, Actor, Desk, Reason, Refusal};

/// Each season's table tells the same already; the record ties the names of one person together.
/// Agreeing twice changes nothing.
///
/// # Errors
/// [`Refusal::NotFound`] to anybody outside, [`Reason::Forbidden`] for a minor.
pub async fn create_record_consent(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
) -> Result<OpenRecord, Refusal> {
    desk.store
        .write(async |conn| {
            may(conn, actor, club, Action::Look).await?;
            if store::accounts::find(conn, actor.account).await?.minor {
                let detail = "The record of a minor stays within the club.";
                return Err(Refusal::rule(Reason::Forbidden, detail));
            }
            if let Some(open) = store::records::find(conn, club, actor.account).await? {
                return Ok(open);
            }
            let now = store::clock::now(conn).await?;
            // A random one: its address tells nothing, not even when it was made.
            let open = OpenRecord {
                record: Uuid::new_v4(),
                agreed_at: now,
            };
            store::records::create(conn, club, actor.account, open).await?;
            Scene::in_club(club, actor, now)
                .tell_officers(conn, "create_record_consent", json!({}))
                .await?;
            Ok(open)
        })
        .await
}
