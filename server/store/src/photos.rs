//! Photos of painted models, identified by the digest of their pixels.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::painting::{PerceptualHash, PhotoDigest};
use league::time::Instant;
use uuid::Uuid;

use crate::keys::{of_season, season_columns};
use crate::schema::painting_photos;
use crate::{Conn, StoreError};

/// A picture as it is kept.
#[derive(Clone, Debug)]
pub struct Photo {
    /// Of the pixels as they were sent.
    pub digest: PhotoDigest,
    /// What it looks like.
    pub likeness: PerceptualHash,
    /// The picture, written by us.
    pub jpeg: Vec<u8>,
}

/// A picture of the season without its pixels.
#[derive(Clone, Copy, Debug)]
pub struct PhotoInfo {
    pub player: PlayerId,
    pub digest: PhotoDigest,
    /// What it looks like.
    pub likeness: PerceptualHash,
}

/// Saves a picture; one that the player has already stays as it is.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn create(
    conn: &mut Conn,
    season: SeasonKey,
    player: PlayerId,
    photo: &Photo,
    now: Instant,
) -> Result<(), StoreError> {
    diesel::insert_into(painting_photos::table)
        .values((
            season_columns!(painting_photos, season),
            painting_photos::player_id.eq(player.0),
            painting_photos::digest.eq(photo.digest.0.as_slice()),
            painting_photos::likeness.eq(photo.likeness.0.cast_signed()),
            painting_photos::jpeg.eq(&photo.jpeg),
            painting_photos::uploaded_at.eq(now),
        ))
        .on_conflict_do_nothing()
        .execute(conn)
        .await?;
    Ok(())
}

/// The JPEG of a picture, whoever sent it: the same name is the same pixels.
///
/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find(
    conn: &mut Conn,
    season: SeasonKey,
    digest: PhotoDigest,
) -> Result<Vec<u8>, StoreError> {
    Ok(painting_photos::table
        .filter(of_season!(painting_photos, season))
        .filter(painting_photos::digest.eq(digest.0.as_slice()))
        .order(painting_photos::player_id)
        .select(painting_photos::jpeg)
        .first(conn)
        .await?)
}

/// What pictures of a season look like, the oldest first.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list(conn: &mut Conn, season: SeasonKey) -> Result<Vec<PhotoInfo>, StoreError> {
    let rows: Vec<(Uuid, Vec<u8>, i64)> = painting_photos::table
        .filter(of_season!(painting_photos, season))
        .order((painting_photos::uploaded_at, painting_photos::digest))
        .select((
            painting_photos::player_id,
            painting_photos::digest,
            painting_photos::likeness,
        ))
        .load(conn)
        .await?;
    rows.into_iter()
        .map(|(player, digest, likeness)| {
            let digest = digest
                .try_into()
                .map_err(|_| StoreError::Internal("a photo without a digest".to_owned()))?;
            Ok(PhotoInfo {
                player: PlayerId(player),
                digest: PhotoDigest(digest),
                likeness: PerceptualHash(likeness.cast_unsigned()),
            })
        })
        .collect()
}

/// Takes a picture away: of one player, or of everybody who sent it.
///
/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn delete(
    conn: &mut Conn,
    season: SeasonKey,
    digest: PhotoDigest,
    of: Option<PlayerId>,
) -> Result<(), StoreError> {
    let mut photos = diesel::delete(painting_photos::table)
        .filter(of_season!(painting_photos, season))
        .filter(painting_photos::digest.eq(digest.0.as_slice()))
        .into_boxed();
    if let Some(player) = of {
        photos = photos.filter(painting_photos::player_id.eq(player.0));
    }
    match photos.execute(conn).await? {
        0 => Err(StoreError::NotFound),
        _ => Ok(()),
    }
}
