//! A photo of painted models, for the club alone.

use league::ids::{ClubId, SeasonId};
use league::painting::PhotoDigest;

use crate::seasons::look::look;
use crate::{Desk, Refusal, Viewer};

/// The JPEG.
///
/// # Errors
/// [`Refusal::NotFound`] also for everybody who is not of the club, whoever may see the season.
pub async fn find_photo(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    photo: PhotoDigest,
) -> Result<Vec<u8>, Refusal> {
    desk.store
        .read(async |conn| {
            let look = look(conn, viewer, club, season).await?;
            look.role.ok_or(Refusal::NotFound)?;
            Ok(store::photos::find(conn, club, season, photo).await?)
        })
        .await
}
