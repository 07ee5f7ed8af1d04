//! A photo of painted models, for the club alone.

use league::keys::SeasonKey;
use league::painting::{Evidence, PhotoDigest};
use store::Conn;

use super::list_claims::list_visible_claims;
use crate::access::view_season;
use crate::{App, Refusal, Viewer};

/// The JPEG. A photo shows a unit, and so tells of a list: others than its owner see it once a claim
/// of a week whose lists are opened names it.
///
/// # Errors
/// [`Refusal::NotFound`] also for everybody who is not of the club, whoever may see the season, and
/// for a photo that is not to be seen yet.
pub async fn find_photo(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
    photo: PhotoDigest,
) -> Result<Vec<u8>, Refusal> {
    app.store
        .read(async |conn| {
            let view = view_season(conn, viewer, season).await?;
            view.role.ok_or(Refusal::NotFound)?;
            let jpeg = store::photos::find(conn, season, photo).await?;
            if is_own_photo(conn, viewer, season, photo).await?
                || is_named_by_claim(conn, viewer, season, photo).await?
            {
                Ok(jpeg)
            } else {
                Err(Refusal::NotFound)
            }
        })
        .await
}

/// Whether the viewer sent it.
async fn is_own_photo(
    conn: &mut Conn,
    viewer: Viewer,
    season: SeasonKey,
    photo: PhotoDigest,
) -> Result<bool, Refusal> {
    let Some(actor) = viewer else {
        return Ok(false);
    };
    let own = store::players::find_by_account(conn, season, actor.account).await?;
    let known = store::photos::list(conn, season).await?;
    Ok(own.is_some_and(|own| {
        let mut known = known.iter();
        known.any(|known| (known.player, known.digest) == (own.id, photo))
    }))
}

/// Whether a claim that the viewer sees names it.
async fn is_named_by_claim(
    conn: &mut Conn,
    viewer: Viewer,
    season: SeasonKey,
    photo: PhotoDigest,
) -> Result<bool, Refusal> {
    let claims = list_visible_claims(conn, viewer, season, None).await?;
    let mut evidence = claims.iter().map(|claim| claim.made.evidence);
    Ok(evidence.any(|evidence| evidence == Evidence::Photo(photo)))
}
