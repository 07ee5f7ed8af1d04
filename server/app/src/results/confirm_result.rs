//! The other side agrees, to the report that it has seen.

use document::result::SlipDocument;
use league::ids::{ClubId, GameId, SeasonId};
use league::result::Slip;
use league::time::Instant;
use serde_json::json;

use super::place::{Place, refuse, take_place};
use crate::record::Scene;
use crate::{Actor, Desk, Reason, Refusal};

/// `seen` is when the report was made that the player agrees to.
///
/// # Errors
/// [`Reason::SlipStateChanged`] when another report came in between; [`Reason::SelfConfirmation`] and
/// the other reasons of slips.
pub async fn confirm_result(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    game: GameId,
    seen: Option<Instant>,
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
            let seen = seen.filter(|_| matches!(game.slip, Slip::Reported { .. }));
            if seen.is_some_and(|seen| !game.slip.awaits_answer_to(seen)) {
                let detail =
                    "Another result was reported in between; look at it before you answer.";
                return Err(Refusal::rule(Reason::SlipStateChanged, detail));
            }
            game.slip = game.slip.confirm(side, now).map_err(refuse)?;
            store::games::update_slip(conn, club, season.id, &game).await?;
            Scene::in_season(season.key(), actor, now)
                .tell_everyone(desk, conn, "confirm_result", json!({"game": game.id.0}))
                .await?;
            Ok(SlipDocument::from(&game.slip))
        })
        .await
}
