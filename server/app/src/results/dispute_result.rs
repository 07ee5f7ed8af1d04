//! Disputing a reported result: nothing counts until a referee has ruled.

use document::results::{SlipDocument, TypedResultDocument};
use league::ids::{ClubId, GameId, SeasonId};
use serde_json::json;

use super::own_game::{GameSeat, lock_own_game, slip_refusal};
use super::score_result::score_result;
use crate::record::Scene;
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
    club: ClubId,
    season: SeasonId,
    game: GameId,
    command: DisputeResult,
) -> Result<SlipDocument, Refusal> {
    let reason = user_text::parse_reason(&command.reason)?;
    app.store
        .write(async |conn| {
            let seat = lock_own_game(conn, actor, club, season, game).await?;
            let GameSeat {
                season,
                mut game,
                players,
                side,
                now,
            } = seat;
            let counter = match command.counter {
                None => None,
                Some(typed) => {
                    let read = score_result(conn, &season, &game, players, typed).await;
                    Some(read.map_err(|refusal| refusal.below("/counter"))?)
                }
            };
            game.slip = game
                .slip
                .dispute(side, reason, counter, now)
                .map_err(slip_refusal)?;
            store::games::update_slip(conn, club, season.id, &game).await?;
            let slip = SlipDocument::from(&game.slip);
            Scene::in_season(season.key(), actor, now)
                .tell_everyone(
                    app,
                    conn,
                    "dispute_result",
                    json!({"game": game.id.0, "slip": slip}),
                )
                .await?;
            Ok(slip)
        })
        .await
}
