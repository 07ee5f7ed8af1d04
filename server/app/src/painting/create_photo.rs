//! Sending a photo of painted models. Models only: no people, least of all minors, and nothing that
//! tells where somebody lives.

use std::sync::Arc;

use league::ids::{ClubId, PlayerId, SeasonId};
use league::painting::{Evidence, PhotoDigest};
use serde_json::json;
use store::Conn;
use store::photos::Photo;
use store::seasons::Season;

use super::claim_painting::photo_used;
use super::picture;
use crate::record::Scene;
use crate::seasons::look::{look, own_place};
use crate::{Actor, Desk, Reason, Refusal};

/// Keeps the picture and answers its name. One that looks like another player's is taken in all the
/// same, and those who judge are told: a refusal would tell what others have sent.
///
/// # Errors
/// [`Reason::Forbidden`] for a minor's account, [`Reason::PhotoAlreadyUsed`] for a picture that
/// stands behind a claim of one's own, [`Reason::ImageTooLarge`], [`Reason::InvalidImage`].
pub async fn create_photo(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    bytes: impl AsRef<[u8]> + Send + 'static,
) -> Result<PhotoDigest, Refusal> {
    desk.store
        .read(async |conn| may_send(conn, actor, club, season).await.map(drop))
        .await?;
    let photo = decode(desk, bytes).await?;
    desk.store
        .write(async |conn| {
            let (season, player) = may_send(conn, actor, club, season).await?;
            let claims = store::painting::list(conn, club, season.id, Some(player)).await?;
            let used = |evidence| evidence == Evidence::Photo(photo.digest);
            if claims.iter().any(|claim| used(claim.made.evidence)) {
                return Err(photo_used());
            }
            let now = store::clock::now(conn).await?;
            let alike = look_alikes(conn, &season, player, &photo).await?;
            store::photos::create(conn, club, season.id, player, &photo, now).await?;
            let facts = json!({
                "photo": document::hex(&photo.digest.0),
                "player": player.0,
                "looks_like": alike,
            });
            Scene::in_season(&season, actor, now)
                .tell_officers(conn, "create_photo", facts)
                .await?;
            Ok(photo.digest)
        })
        .await
}

async fn may_send(
    conn: &mut Conn,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
) -> Result<(Season, PlayerId), Refusal> {
    let season = look(conn, Some(actor), club, season).await?.season;
    let player = own_place(conn, actor, &season).await?.id;
    if store::accounts::find(conn, actor.account).await?.minor {
        let detail = "No photos from a minor's account; the opponent or a referee looks at the \
                      models at the table.";
        return Err(Refusal::rule(Reason::Forbidden, detail));
    }
    Ok((season, player))
}

/// Off the threads that answer requests, and few at once: a picture takes much memory.
async fn decode(desk: &Desk, bytes: impl AsRef<[u8]> + Send + 'static) -> Result<Photo, Refusal> {
    let closed = |_| Refusal::Broken("nobody decodes any more".to_owned());
    let turn = Arc::clone(&desk.decoding)
        .acquire_owned()
        .await
        .map_err(closed)?;
    tokio::task::spawn_blocking(move || {
        let photo = picture::read(bytes.as_ref());
        drop(turn);
        photo
    })
    .await
    .map_err(|cause| Refusal::Broken(format!("photo: {cause}")))?
}

/// The names of pictures that others sent and that seem to show the same.
async fn look_alikes(
    conn: &mut Conn,
    season: &Season,
    player: PlayerId,
    photo: &Photo,
) -> Result<Vec<String>, Refusal> {
    let known = store::photos::list(conn, season.club, season.id).await?;
    let others = known.iter().filter(|other| {
        (other.player, other.digest) != (player, photo.digest)
            && other.likeness.resembles(photo.likeness)
    });
    Ok(others.map(|other| document::hex(&other.digest.0)).collect())
}
