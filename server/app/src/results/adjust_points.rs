//! Adjusting points by a referee, with a reason: a ledger line of its own that erases none.

use document::trail::TrailAct;
use futures_util::future::try_join;
use league::ids::{PlayerId, RulingId};
use league::keys::SeasonKey;
use league::points::LeaguePoints;
use league::standings::Adjustment;
use league::time::Instant;
use league::week::WeekNo;
use messages::results;
use serde_json::json;
use store::Conn;
use store::players::Player;
use store::seasons::Season;
use uuid::Uuid;

use super::idempotent::{Claim, claim};
use crate::access::{authorize, must_be_started};
use crate::season_change::SeasonChange;
use crate::{Action, Actor, App, Fault, Reason, Refusal, user_text};

const MAX_ADJUSTMENT: i32 = 1000;

/// What to give or take.
#[derive(Clone, Debug)]
pub struct AdjustPoints {
    /// The client's key for this request, so that sending it twice acts once.
    pub key: Option<String>,
    pub player: PlayerId,
    pub week: WeekNo,
    /// How many; negative takes.
    pub amount: i32,
    pub reason: String,
}

/// # Errors
/// [`Reason::ConflictOfInterest`] for one's own points, [`Reason::Validation`],
/// [`Reason::InvalidText`], [`Reason::IdempotencyKeyReused`].
pub async fn adjust_points(
    app: &App,
    actor: Actor,
    season: SeasonKey,
    command: AdjustPoints,
) -> Result<RulingId, Refusal> {
    let adjustment = parse(&command)?;
    let request = json!({
        "operation": "adjust_points",
        "club": season.club.0,
        "season": season.season.0,
        "player": command.player.0,
        "week": command.week.number(),
        "amount": command.amount,
        "reason": command.reason,
    });
    app.write(async |mut tx| {
        authorize(&mut tx, actor, season.club, Action::Judge).await?;
        let season = store::seasons::lock(&mut tx, season).await?;
        let now = store::clock::now(&tx).await?;
        let key = match command.key.clone() {
            None => None,
            Some(key) => match claim(&mut tx, actor, key, &request, now).await? {
                Claim::Answered(ruling) => return Ok(tx.commit(RulingId(ruling))),
                Claim::New(key) => Some(key),
            },
        };
        must_be_started(&season)?;
        let player = adjust(&mut tx, actor, &season, &adjustment, now).await?;
        if let Some(key) = key {
            key.save_answer(&mut tx, &adjustment.ruling.0).await?;
        }
        let act = TrailAct::AdjustPoints {
            player: player.id.0,
            week: adjustment.week.number(),
            amount: adjustment.amount.get(),
            reason: adjustment.reason.as_str().to_owned(),
        };
        let change = SeasonChange {
            changes_closed_week_from: Some(adjustment.week),
            ..SeasonChange::new(season.key(), actor, now, act)
        };
        Ok(tx.publish(change).await?.with(adjustment.ruling))
    })
    .await
}

/// The line of the ledger that is asked for.
fn parse(command: &AdjustPoints) -> Result<Adjustment, Refusal> {
    let reason = user_text::parse_reason(&command.reason)?;
    let nearest = match command.amount {
        0 => 1,
        amount => amount.clamp(-MAX_ADJUSTMENT, MAX_ADJUSTMENT),
    };
    if nearest != command.amount {
        let message = results::adjustment_range(MAX_ADJUSTMENT);
        let fault = Fault::new("validation", "/amount", message).with(nearest, command.amount);
        return Err(Refusal::faults(
            Reason::Validation,
            results::adjustment_amount(),
            vec![fault],
        ));
    }
    Ok(Adjustment {
        ruling: RulingId(Uuid::now_v7()),
        player: command.player,
        week: command.week,
        amount: LeaguePoints::new(command.amount),
        reason,
        version: 1,
    })
}

async fn adjust(
    conn: &mut Conn,
    actor: Actor,
    season: &Season,
    adjustment: &Adjustment,
    now: Instant,
) -> Result<Player, Refusal> {
    let key = season.key();
    let (_, player) = try_join(
        store::week_limits::find(conn, key.week(adjustment.week)),
        store::players::find(conn, key, adjustment.player),
    )
    .await?;
    if player.account == actor.account {
        let message = results::own_points();
        return Err(Refusal::rule(Reason::ConflictOfInterest, message));
    }
    store::adjustments::create(conn, key, adjustment, actor.account, now).await?;
    Ok(player)
}
