//! Confirming a reported result, by the opponent who has seen that very report.

use document::results::SlipDocument;
use document::trail::TrailAct;
use league::keys::GameKey;
use league::result::Slip;
use league::time::Instant;
use messages::results;

use super::own_game::{GameSeat, lock_own_game, slip_refusal};
use crate::season_change::SeasonChange;
use crate::{Actor, App, Reason, Refusal};

/// `seen` is when the report was made that the player agrees to.
///
/// # Errors
/// [`Reason::SlipStateChanged`] when another report came in between; [`Reason::SelfConfirmation`] and
/// the other reasons of slips.
pub async fn confirm_result(
    app: &App,
    actor: Actor,
    game: GameKey,
    seen: Option<Instant>,
) -> Result<SlipDocument, Refusal> {
    app.write(async |mut tx| {
        let seat = lock_own_game(&mut tx, actor, game).await?;
        let GameSeat {
            season,
            mut game,
            side,
            now,
            ..
        } = seat;
        let seen = seen.filter(|_| matches!(game.slip, Slip::Reported { .. }));
        if seen.is_some_and(|seen| !game.slip.awaits_answer_to(seen)) {
            let message = results::slip_changed();
            return Err(Refusal::rule(Reason::SlipStateChanged, message));
        }
        game.slip = game.slip.confirm(side, now).map_err(slip_refusal)?;
        store::games::update_slip(&mut tx, season.key(), &game).await?;
        let act = TrailAct::ConfirmResult { game: game.id.0 };
        let change = SeasonChange::new(season.key(), actor, now, act);
        Ok(tx
            .publish(change)
            .await?
            .with(SlipDocument::from(&game.slip)))
    })
    .await
}
