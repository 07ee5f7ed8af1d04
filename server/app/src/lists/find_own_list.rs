//! A player's own draft and sealed list.

use league::ids::{ClubId, SeasonId};
use league::week::WeekNo;
use store::lists::PlayerList;

use crate::access::view_season;
use crate::{Actor, App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] before anything was saved, and for somebody who does not play.
pub async fn find_own_list(
    app: &App,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<PlayerList, Refusal> {
    app.store
        .read(async |conn| {
            view_season(conn, Some(actor), club, season).await?;
            let player = store::players::find_by_account(conn, club, season, actor.account).await?;
            let player = player.ok_or(Refusal::NotFound)?.id;
            let list = store::lists::find(conn, club, season, week, player).await?;
            list.ok_or(Refusal::NotFound)
        })
        .await
}
