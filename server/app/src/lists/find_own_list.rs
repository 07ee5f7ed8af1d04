//! A player's own draft and sealed list.

use league::keys::WeekKey;
use store::lists::PlayerList;

use crate::access::view_season;
use crate::{Actor, App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] before anything was saved, and for somebody who does not play.
pub async fn find_own_list(app: &App, actor: Actor, week: WeekKey) -> Result<PlayerList, Refusal> {
    app.store
        .read(async |conn| {
            view_season(conn, Some(actor), week.season).await?;
            let player = store::players::find_by_account(conn, week.season, actor.account).await?;
            let player = player.ok_or(Refusal::NotFound)?.id;
            let list = store::lists::find(conn, week, player).await?;
            list.ok_or(Refusal::NotFound)
        })
        .await
}
