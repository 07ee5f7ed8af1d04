//! The nights of a week on which a player can come: as told for the week, else the usual ones.

use crate::access::authorize_player;
use crate::{Actor, App, Refusal};
use league::keys::WeekKey;

/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play.
pub async fn find_availability(
    app: &App,
    actor: Actor,
    week: WeekKey,
) -> Result<Vec<String>, Refusal> {
    app.store
        .read(async |conn| {
            let (_, player) = authorize_player(conn, actor.account, week.season).await?;
            let told = store::players::list_availabilities(conn, week).await?;
            let own = told.into_iter().find(|(who, _)| *who == player.id);
            Ok(own.map_or(player.nights, |(_, nights)| nights))
        })
        .await
}
