//! The nights of a week on which a player can come: as told for the week, else the usual ones.

use league::ids::{ClubId, SeasonId};
use league::week::WeekNo;

use crate::access::authorize_player;
use crate::{Actor, App, Refusal};

/// # Errors
/// [`Refusal::NotFound`] for somebody who does not play.
pub async fn find_availability(
    app: &App,
    actor: Actor,
    club: ClubId,
    id: SeasonId,
    week: WeekNo,
) -> Result<Vec<String>, Refusal> {
    app.store
        .read(async |conn| {
            let (_, player) = authorize_player(conn, actor.account, club, id).await?;
            let told = store::players::list_availabilities(conn, club, id, week).await?;
            let own = told.into_iter().find(|(who, _)| *who == player.id);
            Ok(own.map_or(player.nights, |(_, nights)| nights))
        })
        .await
}
