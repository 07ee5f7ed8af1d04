//! Reporting a result. A second, different report of the other side is no error but a dispute.

use chrono::TimeDelta;
use document::results::{SlipDocument, TypedResultDocument};
use document::trail::TrailAct;
use league::keys::GameKey;
use league::result::{Outcome, ResultReport, Slip};
use messages::results;
use serde_json::json;
use store::Conn;
use store::weeks::Week;

use super::idempotent::{Claim, claim};
use super::own_game::{GameSeat, slip_refusal};
use super::score_result::score_result;
use crate::access::{must_be_started, view_season};
use crate::season_change::SeasonChange;
use crate::{Actor, App, Reason, Refusal};

/// A report with the key that makes sending it twice act once.
#[derive(Clone, Debug)]
pub struct ReportResult {
    /// The client's key for this request.
    pub key: String,
    pub typed: TypedResultDocument,
}

/// Answers the slip as the report left it. The same request sent again is answered the same.
///
/// # Errors
/// [`Reason::RoundNotOpen`] before the night begins, [`Reason::ImpossibleScore`],
/// [`Reason::ResultFinal`], [`Reason::NotAParticipant`], [`Reason::IdempotencyKeyReused`].
pub async fn report_result(
    app: &App,
    actor: Actor,
    game: GameKey,
    command: ReportResult,
) -> Result<SlipDocument, Refusal> {
    let request = json!({
        "operation": "report_result",
        "club": game.season.club.0,
        "season": game.season.season.0,
        "game": game.game.0,
        "body": command.typed,
    });
    app.write(async |mut tx| {
        let view = view_season(&mut tx, Some(actor), game.season).await?;
        let game = store::games::lock(&mut tx, game).await?;
        let now = store::clock::now(&tx).await?;
        let key = match claim(&mut tx, actor, command.key.clone(), &request, now).await? {
            Claim::Answered(slip) => return Ok(tx.commit(slip)),
            Claim::New(key) => key,
        };
        must_be_started(&view.season)?;
        let seat = GameSeat::find(&mut tx, actor, view, game, now).await?;
        let (key_of_season, id) = (seat.season.key(), seat.game.id);
        let slip = SlipDocument::from(&report(&mut tx, seat, command.typed.clone()).await?);
        key.save_answer(&mut tx, &slip).await?;
        let act = TrailAct::ReportResult {
            game: id.0,
            slip: Box::new(slip.clone()),
        };
        let change = SeasonChange::new(key_of_season, actor, now, act);
        Ok(tx.publish(change).await?.with(slip))
    })
    .await
}

async fn report(
    conn: &mut Conn,
    seat: GameSeat,
    typed: TypedResultDocument,
) -> Result<Slip, Refusal> {
    let week = store::weeks::find(conn, seat.season.key().week(seat.game.week)).await?;
    must_have_begun(&seat, &week)?;
    let GameSeat {
        season,
        mut game,
        players,
        side,
        now,
    } = seat;
    let outcome = score_result(conn, &season, &week, players, typed, now).await?;
    if outcome == Outcome::Void {
        return Err(Refusal::fault(
            Reason::Validation,
            "/kind",
            results::referee_strikes(),
        ));
    }
    let within = TimeDelta::hours(season.policy.confirm_within_hours.into());
    game.slip = game
        .slip
        .report(
            ResultReport {
                by: side,
                outcome,
                at: now,
            },
            within,
        )
        .map_err(slip_refusal)?;
    store::games::update_slip(conn, season.key(), &game).await?;
    Ok(game.slip)
}

fn must_have_begun(seat: &GameSeat, week: &Week) -> Result<(), Refusal> {
    let night = seat
        .game
        .meeting
        .as_ref()
        .map(|meeting| meeting.night.as_str());
    let begins = week
        .nights
        .iter()
        .find(|known| Some(known.key.as_str()) == night);
    match begins {
        Some(night) if !night.has_begun(seat.now) => Err(Refusal::rule(
            Reason::RoundNotOpen,
            results::night_not_begun(),
        )
        .fact("begins_at", night.begins.1.to_rfc3339())),
        _ => Ok(()),
    }
}
