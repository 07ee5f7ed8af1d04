//! Adjusting points by a referee, with a reason: a ledger line of its own that erases none.

use futures_util::future::try_join3;
use league::ids::{ClubId, PlayerId, RulingId, SeasonId};
use league::points::LeaguePoints;
use league::standings::Adjustment;
use league::week::WeekNo;
use serde_json::json;
use store::Conn;
use store::seasons::Season;
use uuid::Uuid;

use super::idempotent::run_once;
use crate::access::{authorize, must_be_started};
use crate::record::Scene;
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
    club: ClubId,
    season: SeasonId,
    command: AdjustPoints,
) -> Result<RulingId, Refusal> {
    let adjustment = parse(&command)?;
    let request = json!({
        "operation": "adjust_points",
        "club": club.0,
        "season": season.0,
        "player": command.player.0,
        "week": command.week.number(),
        "amount": command.amount,
        "reason": command.reason,
    });
    app.store
        .write(async |conn| {
            authorize(conn, actor, club, Action::Judge).await?;
            let season = store::seasons::lock(conn, club, season).await?;
            let ruling = match command.key {
                None => adjust(app, conn, actor, &season, &adjustment).await?,
                Some(key) => {
                    run_once(conn, actor, &key, &request, async |conn| {
                        adjust(app, conn, actor, &season, &adjustment).await
                    })
                    .await?
                }
            };
            Ok(RulingId(ruling))
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
        let detail = format!("From 1 to {MAX_ADJUSTMENT} points, given or taken.");
        let fault = Fault::new("validation", "/amount", detail).with(nearest, command.amount);
        return Err(Refusal::faults(
            Reason::Validation,
            "The amount is not valid.",
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
    app: &App,
    conn: &mut Conn,
    actor: Actor,
    season: &Season,
    adjustment: &Adjustment,
) -> Result<Uuid, Refusal> {
    must_be_started(season)?;
    let (club, id, week) = (season.club, season.id, adjustment.week);
    let (_, player, now) = try_join3(
        store::week_limits::find(conn, club, id, week),
        store::players::find(conn, club, id, adjustment.player),
        store::clock::now(conn),
    )
    .await?;
    if player.account == actor.account {
        let detail = "Somebody else must rule on your own points.";
        return Err(Refusal::rule(Reason::ConflictOfInterest, detail));
    }
    store::adjustments::create(conn, club, id, adjustment, actor.account, now).await?;
    Scene::in_season(season.key(), actor, now)
        .changing(week)
        .tell_everyone(
            app,
            conn,
            "adjust_points",
            json!({
                "player": player.id.0,
                "week": week.number(),
                "amount": adjustment.amount.get(),
                "reason": adjustment.reason.as_str(),
            }),
        )
        .await?;
    Ok(adjustment.ruling.0)
}
