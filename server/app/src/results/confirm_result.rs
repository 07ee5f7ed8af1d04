//! The other side agrees.

use document::result::SlipDocument;
use league::ids::{ClubId, GameId, SeasonId};
use serde_json::json;

use super::place::{Place, refuse, take_place};
use crate::record::Scene;
use crate::{Actor, Desk, Refusal};

/// # Errors
/// [`Reason::SelfConfirmation`](crate::Reason::SelfConfirmation) and the other reasons of slips.
pub async fn confirm_result(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    game: GameId,
) -> Result<SlipDocument, Refusal> {
    desk.store
        .write(async |conn| {
            let place = take_place(conn, actor, club, season, game).await?;
            let Place {
                season,
                mut game,
                side,
                now,
                ..
            } = place;
            game.slip = game.slip.confirm(side, now).map_err(refuse)?;
            store::games::update_slip(conn, club, season.id, &game).await?;
            Scene::in_season(&season, actor, now)
                .tell_everyone(conn, "confirm_result", json!({"game": game.id.0}))
                .await?;
            Ok(SlipDocument::from(&game.slip))
        })
        .await
}
