//! The painting log of a season.

use league::ids::{ClubId, PlayerId, SeasonId};
use league::painting::Claim;
use league::week::WeekNo;
use store::Conn;

use crate::seasons::look::look;
use crate::{Desk, Refusal, Viewer};

/// Every claim, or those of one player, in the order in which they were made. A claim names a unit,
/// and so tells of a list: before the lists of its week are opened only its owner sees it.
///
/// # Errors
/// [`Refusal::NotFound`].
pub async fn list_claims(
    desk: &Desk,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    player: Option<PlayerId>,
) -> Result<Vec<Claim>, Refusal> {
    desk.store
        .read(async |conn| {
            look(conn, viewer, club, season).await?;
            seen_claims(conn, viewer, club, season, player).await
        })
        .await
}

/// The claims of somebody, or of everybody, that the viewer may see.
pub(super) async fn seen_claims(
    conn: &mut Conn,
    viewer: Viewer,
    club: ClubId,
    season: SeasonId,
    player: Option<PlayerId>,
) -> Result<Vec<Claim>, Refusal> {
    let own = match viewer {
        Some(actor) => store::players::find_by_account(conn, club, season, actor.account).await?,
        None => None,
    };
    let own = own.map(|player| player.id);
    let weeks = store::weeks::list(conn, club, season).await?;
    let opened: Vec<WeekNo> = weeks
        .iter()
        .filter(|week| week.facts.lists_opened_at.is_some())
        .map(|week| week.week)
        .collect();
    let mut claims = store::painting::list(conn, club, season, player).await?;
    claims.retain(|claim| own == Some(claim.made.player) || opened.contains(&claim.made.week));
    Ok(claims)
}
