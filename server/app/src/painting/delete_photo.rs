//! Taking a photo away: one's own at any time, any by a referee. What was verified by it stands.

use league::ids::{ClubId, SeasonId};
use league::painting::PhotoDigest;
use league::role::Role;
use serde_json::json;

use crate::may::may;
use crate::record::Scene;
use crate::{Action, Actor, Desk, Refusal};

/// # Errors
/// [`Refusal::NotFound`] also for a photo that is not one's own.
pub async fn delete_photo(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    photo: PhotoDigest,
) -> Result<(), Refusal> {
    desk.store
        .write(async |conn| {
            let role = may(conn, actor, club, Action::Play).await?;
            let season = store::seasons::find(conn, club, season).await?;
            let own = store::players::find_by_account(conn, club, season.id, actor.account).await?;
            let of = match role {
                Role::Player => Some(own.ok_or(Refusal::NotFound)?.id),
                Role::Owner | Role::Organiser | Role::Referee => None,
            };
            store::photos::delete(conn, club, season.id, photo, of).await?;
            let now = store::clock::now(conn).await?;
            let facts = json!({"photo": document::hex(&photo.0)});
            Scene::in_season(season.key(), actor, now)
                .tell_officers(conn, "delete_photo", facts)
                .await
        })
        .await
}
