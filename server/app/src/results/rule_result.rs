//! Ruling on a result: by a referee, with a public reason, never on a game of their own.

use document::results::{SlipDocument, TypedResultDocument};
use document::trail::TrailAct;
use league::ids::RulingId;
use league::keys::GameKey;
use league::result::Ruling;
use uuid::Uuid;

use super::own_game::{find_accounts, players_of, slip_refusal};
use super::score_result::score_result;
use crate::access::{authorize, must_be_started};
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Refusal, user_text};

#[derive(Clone, Debug)]
pub struct RuleResult {
    pub typed: TypedResultDocument,
    pub reason: String,
}

/// Decides whatever the slip says so far. A ruling on a result that stood makes a new version.
///
/// # Errors
/// [`crate::Reason::ConflictOfInterest`], [`Reason::InvalidText`], [`Reason::ImpossibleScore`].
pub async fn rule_result(
    app: &App,
    actor: Actor,
    game: GameKey,
    command: RuleResult,
) -> Result<SlipDocument, Refusal> {
    let reason = user_text::parse_reason(&command.reason)?;
    app.write(async |mut tx| {
        authorize(&mut tx, actor, game.season.club, Action::Judge).await?;
        let season = store::seasons::find(&mut tx, game.season).await?;
        must_be_started(&season)?;
        let mut game = store::games::lock(&mut tx, game).await?;
        let players = players_of(&game)?;
        let accounts = find_accounts(&mut tx, &season, players).await?;
        let week = store::weeks::find(&mut tx, season.key().week(game.week)).await?;
        let now = store::clock::now(&tx).await?;
        let outcome = score_result(&mut tx, &season, &week, players, command.typed.clone(), now)
            .await
            .map_err(|refusal| refusal.below("/outcome"))?;
        let ruling = Ruling {
            id: RulingId(Uuid::now_v7()),
            referee: actor.account,
            outcome,
            reason: reason.clone(),
            at: now,
        };
        let stood = game.slip.clone().settle(now).settled().is_some();
        game.slip = game.slip.rule(ruling, accounts).map_err(slip_refusal)?;
        game.version += u32::from(stood);
        store::games::update_slip(&mut tx, season.key(), &game).await?;
        let slip = SlipDocument::from(&game.slip);
        let act = TrailAct::RuleResult {
            game: game.id.0,
            version: game.version,
            slip: Box::new(slip.clone()),
        };
        let change = SeasonChange {
            changes_closed_week_from: Some(game.week),
            ..SeasonChange::new(season.key(), actor, now, act)
        };
        Ok(tx.publish(change).await?.with(slip))
    })
    .await
}
