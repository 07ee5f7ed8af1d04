//! Deleting a photo: one's own at any time, any by a referee. What was verified by it stands.

use league::club_role::ClubRole;
use league::ids::{ClubId, SeasonId};
use league::painting::PhotoDigest;
use serde_json::json;

use crate::access::authorize;
use crate::record::Scene;
use crate::{Action, Actor, App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] also for a photo that is not one's own.
pub async fn delete_photo(
    app: &App,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    photo: PhotoDigest,
) -> Result<(), Refusal> {
    app.store
        .write(async |conn| {
            let role = authorize(conn, actor, club, Action::Play).await?;
            let season = store::seasons::find(conn, club, season).await?;
            let own = store::players::find_by_account(conn, club, season.id, actor.account).await?;
            let of = match role {
                ClubRole::Player => Some(own.ok_or(Refusal::NotFound)?.id),
                ClubRole::Owner | ClubRole::Organiser | ClubRole::Referee => None,
            };
            store::photos::delete(conn, club, season.id, photo, of).await?;
            let now = store::clock::now(conn).await?;
            let facts = json!({"photo": document::encode_hex(&photo.0)});
            Scene::in_season(season.key(), actor, now)
                .tell_officers(conn, "delete_photo", facts)
                .await
        })
        .await
}
