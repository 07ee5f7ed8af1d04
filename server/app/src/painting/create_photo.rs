//! Uploading a photo of painted models. Models only: no people, least of all minors, and nothing that
//! tells where somebody lives.

use document::trail::TrailAct;
use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::painting::{Evidence, PhotoDigest};
use messages::painting;
use store::Conn;
use store::photos::{Photo, PhotoInfo};

use super::claim_painting::photo_used;
use super::picture;
use crate::access::{RunningSeason, authorize_player};
use crate::season_change::OfficersEntry;
use crate::{Actor, App, Reason, Refusal};

/// Photos that one player may have in a season: three for each week of a season of twenty.
pub const MAX_PHOTOS: usize = 60;

/// Keeps the picture and answers its name. One that looks like another player's is taken in all the
/// same: a refusal would tell what others have sent. Those who judge are told once it is claimed.
///
/// # Errors
/// [`Reason::Forbidden`] for a minor's account, [`Reason::PhotoAlreadyUsed`] for a picture that
/// stands behind a claim of one's own, [`Reason::TooManyPhotos`], [`Reason::ImageTooLarge`], [`Reason::InvalidImage`].
pub async fn create_photo(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    bytes: impl AsRef<[u8]> + Send + 'static,
) -> Result<PhotoDigest, Refusal> {
    app.store
        .read(async |conn| authorize_upload(conn, actor, season).await.map(drop))
        .await?;
    let photo = decode(app, bytes).await?;
    app.write(async |mut tx| {
        let (season, player) = authorize_upload(&mut tx, actor, season).await?;
        let claims = store::painting::list(&tx, season.key, Some(player)).await?;
        let used = |evidence| evidence == Evidence::Photo(photo.digest);
        if claims.iter().any(|claim| used(claim.made.evidence)) {
            return Err(photo_used());
        }
        // Locked, so that two uploads at once cannot both take the last free place.
        store::players::lock(&mut tx, season.key, player).await?;
        let known = store::photos::list(&mut tx, season.key).await?;
        must_have_room(&known, player, photo.digest)?;
        let now = store::clock::now(&tx).await?;
        store::photos::create(&mut tx, season.key, player, &photo, now).await?;
        // Not the digest: it is the address of the photo.
        let act = TrailAct::CreatePhoto { player: player.0 };
        Ok(tx
            .record(OfficersEntry::in_season(season.key, actor, now, act))
            .await?
            .with(photo.digest))
    })
    .await
}

async fn authorize_upload(
    conn: &mut Conn,
    actor: Actor,
    season: SeasonKey,
) -> Result<(RunningSeason, PlayerId), Refusal> {
    let (season, player) = authorize_player(conn, actor.account, season).await?;
    if store::accounts::find(conn, actor.account).await?.minor {
        let message = painting::minor_photo();
        return Err(Refusal::rule(Reason::Forbidden, message));
    }
    Ok((season, player.id))
}

/// On a blocking thread, and few at once: a picture takes much memory.
async fn decode(app: &App, bytes: impl AsRef<[u8]> + Send + 'static) -> Result<Photo, Refusal> {
    let permit = app.image_queue.acquire().await?;
    permit
        .run_blocking(move || picture::decode(bytes.as_ref()))
        .await?
}

/// A photo that is there already takes no room.
fn must_have_room(
    known: &[PhotoInfo],
    player: PlayerId,
    photo: PhotoDigest,
) -> Result<(), Refusal> {
    let own = known.iter().filter(|known| known.player == player);
    let others = own.filter(|known| known.digest != photo).count();
    if others < MAX_PHOTOS {
        return Ok(());
    }
    let message = painting::too_many_photos(MAX_PHOTOS);
    Err(Refusal::rule(Reason::TooManyPhotos, message)
        .fact("limit", MAX_PHOTOS)
        .fact("actual", others))
}
