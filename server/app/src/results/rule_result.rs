//! A referee rules, with a reason everybody can read; never on a game of their own.

use document::result::{SlipDocument, TypedResultDocument};
use league::ids::{ClubId, GameId, RulingId, SeasonId};
use league::result::Ruling;
use serde_json::json;
use uuid::Uuid;

use super::outcome::outcome;
use super::place::{accounts, both, refuse};
use crate::may::may;
use crate::record::Scene;
use crate::seasons::look::must_be_started;
use crate::{Action, Actor, Desk, Refusal, words};

/// A ruling.
#[derive(Clone, Debug)]
pub struct RuleResult {
    /// What stands.
    pub typed: TypedResultDocument,
    /// Why.
    pub reason: String,
}

/// Decides whatever the slip says so far. A ruling on a result that stood makes a new version.
///
/// # Errors
/// [`crate::Reason::ConflictOfInterest`], [`Reason::InvalidText`], [`Reason::ImpossibleScore`].
pub async fn rule_result(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    game: GameId,
    command: RuleResult,
) -> Result<SlipDocument, Refusal> {
    let reason = words::reason(&command.reason)?;
    desk.store
        .write(async |conn| {
            may(conn, actor, club, Action::Judge).await?;
            let season = store::seasons::find(conn, club, season).await?;
            must_be_started(&season)?;
            let mut game = store::games::lock(conn, club, season.id, game).await?;
            let players = both(&game)?;
            let accounts = accounts(conn, &season, players).await?;
            let outcome = outcome(conn, &season, &game, players, command.typed)
                .await
                .map_err(|refusal| refusal.below("/outcome"))?;
            let now = store::clock::now(conn).await?;
            let ruling = Ruling {
                id: RulingId(Uuid::now_v7()),
                referee: actor.account,
                outcome,
                reason,
                at: now,
            };
            let stood = game.slip.clone().settle(now).settled().is_some();
            game.slip = game.slip.rule(ruling, accounts).map_err(refuse)?;
            game.version += u32::from(stood);
            store::games::update_slip(conn, club, season.id, &game).await?;
            let slip = SlipDocument::from(&game.slip);
            Scene::in_season(season.key(), actor, now)
                .changing(game.week)
                .tell_everyone(
                    desk,
                    conn,
                    "rule_result",
                    json!({"game": game.id.0, "version": game.version, "slip": slip}),
                )
                .await?;
            Ok(slip)
        })
        .await
}
