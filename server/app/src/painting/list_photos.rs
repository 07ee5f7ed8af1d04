//! The photos of a season that are still there, for the club alone.

use league::keys::SeasonKey;
use league::painting::PhotoDigest;

use crate::access::view_season;
use crate::{App, Refusal, Viewer};

/// Their names; none for somebody who is not of the club.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_photos(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
) -> Result<Vec<PhotoDigest>, Refusal> {
    app.store
        .read(async |conn| {
            if view_season(conn, viewer, season).await?.role.is_none() {
                return Ok(Vec::new());
            }
            let photos = store::photos::list(conn, season).await?;
            Ok(photos.iter().map(|photo| photo.digest).collect())
        })
        .await
}
