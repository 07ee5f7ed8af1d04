//! The other side objects; nothing counts until a referee has ruled.

use document::result::{SlipDocument, TypedResultDocument};
use league::ids::{ClubId, GameId, SeasonId};
use serde_json::json;

use super::outcome::outcome;
use super::place::{Place, refuse, take_place};
use crate::record::Scene;
use crate::{Actor, Desk, Refusal, words};

/// An objection.
#[derive(Clone, Debug)]
pub struct DisputeResult {
    /// Why.
    pub reason: String,
    /// What happened instead, where one can say.
    pub counter: Option<TypedResultDocument>,
}

/// # Errors
/// [`crate::Reason::InvalidText`] and the reasons of slips.
pub async fn dispute_result(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    game: GameId,
    command: DisputeResult,
) -> Result<SlipDocument, Refusal> {
    let reason = words::reason(&command.reason)?;
    desk.store
        .write(async |conn| {
            let place = take_place(conn, actor, club, season, game).await?;
            let Place {
                season,
                mut game,
                players,
                side,
                now,
            } = place;
            let counter = match command.counter {
                None => None,
                Some(typed) => {
                    let read = outcome(conn, &season, &game, players, typed).await;
                    Some(read.map_err(|refusal| refusal.below("/counter"))?)
                }
            };
            game.slip = game
                .slip
                .dispute(side, reason, counter, now)
                .map_err(refuse)?;
            store::games::update_slip(conn, club, season.id, &game).await?;
            let slip = SlipDocument::from(&game.slip);
            Scene::in_season(season.key(), actor, now)
                .tell_everyone(
                    desk,
                    conn,
                    "dispute_result",
                    json!({"game": game.id.0, "slip": slip}),
                )
                .await?;
            Ok(slip)
        })
        .await
}
