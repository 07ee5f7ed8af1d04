//! Disputing a reported result: nothing counts until a referee has ruled.

use document::results::{SlipDocument, TypedResultDocument};
use document::trail::TrailAct;
use league::keys::GameKey;

use super::own_game::{GameSeat, lock_own_game, slip_refusal};
use super::score_result::score_result;
use crate::season_change::SeasonChange;
use crate::{Actor, App, Refusal, user_text};

#[derive(Clone, Debug)]
pub struct DisputeResult {
    pub reason: String,
    /// What happened instead, where one can say.
    pub counter: Option<TypedResultDocument>,
}

/// # Errors
/// [`crate::Reason::InvalidText`] and the reasons of slips.
pub async fn dispute_result(
    app: &App,
    actor: Actor,
    game: GameKey,
    command: DisputeResult,
) -> Result<SlipDocument, Refusal> {
    let reason = user_text::parse_reason(&command.reason)?;
    app.write(async |mut tx| {
        let seat = lock_own_game(&mut tx, actor, game).await?;
        let GameSeat {
            season,
            mut game,
            players,
            side,
            now,
        } = seat;
        let counter = match command.counter.clone() {
            None => None,
            Some(typed) => {
                let week = store::weeks::find(&mut tx, season.key().week(game.week)).await?;
                let read = score_result(&mut tx, &season, &week, players, typed, now).await;
                Some(read.map_err(|refusal| refusal.below("/counter"))?)
            }
        };
        game.slip = game
            .slip
            .dispute(side, reason.clone(), counter, now)
            .map_err(slip_refusal)?;
        store::games::update_slip(&mut tx, season.key(), &game).await?;
        let slip = SlipDocument::from(&game.slip);
        let act = TrailAct::DisputeResult {
            game: game.id.0,
            slip: Box::new(slip.clone()),
        };
        let change = SeasonChange::new(season.key(), actor, now, act);
        Ok(tx.publish(change).await?.with(slip))
    })
    .await
}
