//! Reporting a result. A second, different report of the other side is no error but a dispute.

use chrono::TimeDelta;
use document::results::{SlipDocument, TypedResultDocument};
use league::ids::{ClubId, GameId, SeasonId};
use league::result::{Outcome, ResultReport, Slip};
use serde_json::json;
use store::Conn;

use super::idempotent::run_once;
use super::own_game::{GameSeat, lock_own_game, slip_refusal};
use super::score_result::score_result;
use crate::access::view_season;
use crate::record::Scene;
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
    club: ClubId,
    season: SeasonId,
    game: GameId,
    command: ReportResult,
) -> Result<SlipDocument, Refusal> {
    let request = json!({
        "operation": "report_result",
        "club": club.0,
        "season": season.0,
        "game": game.0,
        "body": command.typed,
    });
    app.store
        .write(async |conn| {
            view_season(conn, Some(actor), club, season).await?;
            store::games::find(conn, club, season, game).await?;
            run_once(conn, actor, &command.key, &request, async |conn| {
                let seat = lock_own_game(conn, actor, club, season, game).await?;
                let slip = report(app, conn, actor, seat, command.typed).await?;
                Ok(SlipDocument::from(&slip))
            })
            .await
        })
        .await
}

async fn report(
    app: &App,
    conn: &mut Conn,
    actor: Actor,
    seat: GameSeat,
    typed: TypedResultDocument,
) -> Result<Slip, Refusal> {
    must_have_begun(conn, &seat).await?;
    let GameSeat {
        season,
        mut game,
        players,
        side,
        now,
    } = seat;
    let outcome = score_result(conn, &season, &game, players, typed).await?;
    if outcome == Outcome::Void {
        return Err(Refusal::fault(
            Reason::Validation,
            "/kind",
            "Only a referee strikes a game from the record.",
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
    store::games::update_slip(conn, season.club, season.id, &game).await?;
    Scene::in_season(season.key(), actor, now)
        .tell_everyone(
            app,
            conn,
            "report_result",
            json!({"game": game.id.0, "slip": SlipDocument::from(&game.slip)}),
        )
        .await?;
    Ok(game.slip)
}

async fn must_have_begun(conn: &mut Conn, seat: &GameSeat) -> Result<(), Refusal> {
    let (club, season, game) = (seat.season.club, seat.season.id, &seat.game);
    let week = store::weeks::find(conn, club, season, game.week).await?;
    let night = game.meeting.as_ref().map(|meeting| meeting.night.as_str());
    let begins = week
        .nights
        .iter()
        .find(|known| Some(known.key.as_str()) == night);
    match begins.map(|night| night.begins.1) {
        Some(begins) if seat.now < begins => Err(Refusal::rule(
            Reason::RoundNotOpen,
            "The night of this game has not begun.",
        )
        .fact("begins_at", begins.to_rfc3339())),
        _ => Ok(()),
    }
}
