//! A referee gives or takes points, with a reason: a line of its own in the ledger, erasing none.

use league::ids::{ClubId, PlayerId, RulingId, SeasonId};
use league::points::LeaguePoints;
use league::standings::Adjustment;
use league::week::WeekNo;
use serde_json::json;
use uuid::Uuid;

use crate::may::may;
use crate::record::Scene;
use crate::seasons::look::must_be_started;
use crate::standings::freeze::freeze;
use crate::{Action, Actor, Desk, Fault, Reason, Refusal, words};

const LARGEST: i32 = 1000;

/// What to give or take.
#[derive(Clone, Debug)]
pub struct AdjustPoints {
    /// Whose points.
    pub player: PlayerId,
    /// For which week.
    pub week: WeekNo,
    /// How many; negative takes.
    pub amount: i32,
    /// Why.
    pub reason: String,
}

/// # Errors
/// [`Reason::ConflictOfInterest`] for one's own points, [`Reason::Validation`],
/// [`Reason::InvalidText`].
pub async fn adjust_points(
    desk: &Desk,
    actor: Actor,
    club: ClubId,
    season: SeasonId,
    command: AdjustPoints,
) -> Result<RulingId, Refusal> {
    let reason = words::reason(&command.reason)?;
    if command.amount == 0 || command.amount.abs() > LARGEST {
        let detail = format!("From 1 to {LARGEST} points, given or taken.");
        let fault = Fault::new("validation", "/amount", detail).with(LARGEST, command.amount);
        return Err(Refusal::faults(
            Reason::Validation,
            "The amount is not valid.",
            vec![fault],
        ));
    }
    desk.store
        .write(async |conn| {
            may(conn, actor, club, Action::Judge).await?;
            let season = store::seasons::lock(conn, club, season).await?;
            must_be_started(&season)?;
            store::weeks::find(conn, club, season.id, command.week).await?;
            let player = store::players::find(conn, club, season.id, command.player).await?;
            if player.account == actor.account {
                let detail = "Somebody else must rule on your own points.";
                return Err(Refusal::rule(Reason::ConflictOfInterest, detail));
            }
            let now = store::clock::now(conn).await?;
            let adjustment = Adjustment {
                ruling: RulingId(Uuid::now_v7()),
                player: player.id,
                week: command.week,
                amount: LeaguePoints::new(command.amount),
                reason,
                version: 1,
            };
            let by = actor.account;
            store::adjustments::create(conn, club, season.id, &adjustment, by, now).await?;
            let week = command.week;
            freeze(conn, club, season.id, week, "adjust_points", now).await?;
            Scene::in_season(&season, actor, now)
                .tell_everyone(
                    conn,
                    "adjust_points",
                    json!({
                        "player": player.id.0,
                        "week": week.number(),
                        "amount": command.amount,
                        "reason": adjustment.reason.as_str(),
                    }),
                )
                .await?;
            Ok(adjustment.ruling)
        })
        .await
}
