//! Deleting a photo: one's own at any time, any by a referee. What was verified by it stands.

use document::trail::TrailAct;
use league::club_role::ClubRole;
use league::keys::SeasonKey;
use league::painting::PhotoDigest;

use crate::access::authorize;
use crate::season_change::OfficersEntry;
use crate::{Action, Actor, App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] also for a photo that is not one's own.
pub async fn delete_photo(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    photo: PhotoDigest,
) -> Result<(), Refusal> {
    app.write(async |mut tx| {
        let role = authorize(&mut tx, actor, season.club, Action::Play).await?;
        let season = store::seasons::find(&mut tx, season).await?;
        let own = store::players::find_by_account(&mut tx, season.key(), actor.account).await?;
        let of = match role {
            ClubRole::Player => Some(own.ok_or(Refusal::NotFound)?.id),
            ClubRole::Owner | ClubRole::Organiser | ClubRole::Referee => None,
        };
        store::photos::delete(&mut tx, season.key(), photo, of).await?;
        let now = store::clock::now(&tx).await?;
        let act = TrailAct::DeletePhoto {
            photo: hex::encode(photo.0),
        };
        tx.record(OfficersEntry::in_season(season.key(), actor, now, act))
            .await
    })
    .await
}
