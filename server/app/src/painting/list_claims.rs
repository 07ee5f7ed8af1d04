//! Reading the painting log of a season.

use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::painting::PaintingClaim;
use store::Conn;

use crate::access::view_season;
use crate::lists::is_list_open;
use crate::{App, Refusal, Viewer};

/// Every claim, or those of one player, in the order in which they were made. A claim names a unit,
/// and so tells of a list: before that is opened only its owner sees it.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_claims(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
    player: Option<PlayerId>,
) -> Result<Vec<PaintingClaim>, Refusal> {
    app.store
        .read(async |conn| {
            view_season(conn, viewer, season).await?;
            list_visible_claims(conn, viewer, season, player).await
        })
        .await
}

/// The claims of somebody, or of everybody, that the viewer may see.
pub(super) async fn list_visible_claims(
    conn: &mut Conn,
    viewer: Viewer,
    season: SeasonKey,
    player: Option<PlayerId>,
) -> Result<Vec<PaintingClaim>, Refusal> {
    let own = match viewer {
        Some(actor) => store::players::find_by_account(conn, season, actor.account).await?,
        None => None,
    };
    let own = own.map(|player| player.id);
    let weeks = store::weeks::list(conn, season).await?;
    let players = store::players::list(conn, season).await?;
    let mut claims = store::painting::list(conn, season, player).await?;
    claims.retain(|claim| {
        let slot = (claim.made.week, claim.made.player);
        own == Some(claim.made.player) || is_list_open(&weeks, &players, slot)
    });
    Ok(claims)
}
