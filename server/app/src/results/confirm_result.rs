//! Confirming a reported result, by the opponent who has seen that very report.

use document::results::SlipDocument;
use league::ids::{ClubId, GameId, SeasonId};
use league::result::Slip;
use league::time::Instant;
use serde_json::json;

use super::own_game::{GameSeat, lock_own_game, slip_refusal};
use crate::record::Scene;
use crate::{Actor, App, Reason, Refusal};

/// `seen` is when the report was made that the player agrees to.
///
/// # Errors
/// [`Reason::SlipStateChanged`] when another report came in between; [`Reason::SelfConfirmation`] and
/// the other reasons of slips.
pub async fn confirm_result(
    app: &App,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    game: GameId,
    seen: Option<Instant>,
) -> Result<SlipDocument, Refusal> {
    app.store
        .write(async |conn| {
            let seat = lock_own_game(conn, actor, club, season, game).await?;
            let GameSeat {
                season,
                mut game,
                side,
                now,
                ..
            } = seat;
            let seen = seen.filter(|_| matches!(game.slip, Slip::Reported { .. }));
            if seen.is_some_and(|seen| !game.slip.awaits_answer_to(seen)) {
                let detail =
                    "Another result was reported in between; look at it before you answer.";
                return Err(Refusal::rule(Reason::SlipStateChanged, detail));
            }
            game.slip = game.slip.confirm(side, now).map_err(slip_refusal)?;
            store::games::update_slip(conn, club, season.id, &game).await?;
            Scene::in_season(season.key(), actor, now)
                .tell_everyone(app, conn, "confirm_result", json!({"game": game.id.0}))
                .await?;
            Ok(SlipDocument::from(&game.slip))
        })
        .await
}
