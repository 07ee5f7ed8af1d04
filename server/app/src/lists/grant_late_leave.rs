//! Granting a player leave to hand in late, with a public reason.

use document::trail::TrailAct;
use league::ids::PlayerId;
use league::keys::WeekKey;
use messages::army_lists;
use store::UniqueConstraint;
use store::lists::LateLeave;

use crate::access::{authorize, must_be_started, must_play};
use crate::refusal::map_unique_violation;
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Reason, Refusal, user_text};

/// # Errors
/// [`Reason::ConflictOfInterest`] for oneself, [`Reason::InvalidText`], [`Reason::WeekState`] when
/// leave was given already or a round is drawn.
pub async fn grant_late_leave(
    app: &App,
    actor: Actor,
    week: WeekKey,
    player: PlayerId,
    reason: &str,
) -> Result<(), Refusal> {
    let reason = user_text::parse_reason(reason)?;
    app.write(async |mut tx| {
        authorize(&mut tx, actor, week.season.club, Action::RunSeason).await?;
        let season = store::seasons::lock(&mut tx, week.season).await?;
        must_be_started(&season)?;
        let player = store::players::find(&tx, season.key(), player).await?;
        must_play(&player, week.week)?;
        if player.account == actor.account {
            let message = army_lists::own_late_leave();
            return Err(Refusal::rule(Reason::ConflictOfInterest, message));
        }
        let facts = store::weeks::find(&mut tx, week).await?.facts;
        let drawn = store::rounds::list(&mut tx, season.key(), Some(week.week)).await?;
        if !facts.takes_late_leave(!drawn.is_empty()) {
            let message = army_lists::round_drawn();
            return Err(Refusal::rule(Reason::WeekState, message));
        }
        let now = store::clock::now(&tx).await?;
        let leave = LateLeave {
            week: week.week,
            player: player.id,
            reason: reason.as_str().to_owned(),
            granted_by: actor.account,
        };
        let saved = store::lists::create_leave(&mut tx, season.key(), &leave, now).await;
        map_unique_violation(saved, UniqueConstraint::LateLeave, || {
            Refusal::rule(Reason::WeekState, army_lists::late_leave_given())
        })?;
        let act = TrailAct::GrantLateLeave {
            player: player.id.0,
            week: week.week.number(),
            reason: leave.reason,
        };
        let change = SeasonChange::new(season.key(), actor, now, act);
        Ok(tx.publish(change).await?.with(()))
    })
    .await
}
