//! Games and their result slips.

use actix_web::web::{Data, Path};
use actix_web::{HttpRequest, get, post, web};
use app::results::{AdjustPoints, DisputeResult, Game, ReportResult, RuleResult};
use app::{Desk, Reason, Refusal};
use chrono::{DateTime, Utc};
use document::result::{SlipDocument, TypedResultDocument};
use league::ids::{ClubId, GameId, PlayerId, SeasonId};
use league::week::WeekNo;
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

use super::seasons::InSeason;
use crate::answer::Answer;
use crate::body::Json;
use crate::problem::{Problem, Problems, WireFault};
use crate::query::Query;
use crate::who::{Caller, SignedIn};

const LONGEST_KEY: usize = 128;

/// A game's address.
#[derive(Clone, Copy, Deserialize, IntoParams)]
#[into_params(parameter_in = Path)]
pub struct OneGame {
    /// The club.
    club: Uuid,
    /// The season.
    season: Uuid,
    /// The game.
    game: Uuid,
}

impl OneGame {
    /// Club, season and game.
    pub fn ids(self) -> (ClubId, SeasonId, GameId) {
        (ClubId(self.club), SeasonId(self.season), GameId(self.game))
    }
}

/// Which week.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct OfWeek {
    /// The week, from 1; all of them when absent.
    #[param(minimum = 1, maximum = 52)]
    week: Option<u8>,
}

impl OfWeek {
    /// # Errors
    /// 404 for a number that no season has.
    pub fn week(&self) -> Result<Option<WeekNo>, Problem> {
        let number = |week| WeekNo::new(week).ok_or_else(|| Problem::wire(WireFault::NotFound));
        self.week.map(number).transpose()
    }
}

/// A game or bye.
#[derive(Serialize, ToSchema)]
pub struct GameView {
    /// Identity.
    id: Uuid,
    /// Of which round.
    round: Uuid,
    /// Of which week.
    week: u8,
    /// Who sits out, or the first of two: the attacker where the scenario has roles.
    first: Uuid,
    /// The opponent; absent for a bye.
    #[serde(skip_serializing_if = "Option::is_none")]
    second: Option<Uuid>,
    /// Short name of the night.
    #[serde(skip_serializing_if = "Option::is_none")]
    night: Option<String>,
    /// Number of the table.
    #[serde(skip_serializing_if = "Option::is_none")]
    table: Option<u16>,
    /// The result slip; absent for a bye.
    #[serde(skip_serializing_if = "Option::is_none")]
    slip: Option<SlipDocument>,
    /// Version of the result.
    version: u32,
}

impl From<Game> for GameView {
    fn from(game: Game) -> Self {
        let slip = game
            .meeting
            .is_some()
            .then(|| SlipDocument::from(&game.slip));
        let (second, night, table) = match game.meeting {
            Some(meeting) => (
                Some(meeting.second.0),
                Some(meeting.night),
                Some(meeting.table),
            ),
            None => (None, None, None),
        };
        Self {
            id: game.id.0,
            round: game.round.0,
            week: game.week.number(),
            first: game.first.0,
            second,
            night,
            table,
            slip,
            version: game.version,
        }
    }
}

/// An objection to a report.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DisputeBody {
    /// Why.
    #[schema(example = "We counted the second bridge for Merrowick")]
    reason: String,
    /// What happened instead, if you can say.
    #[serde(default)]
    counter: Option<TypedResultDocument>,
}

/// A referee's decision.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct RulingBody {
    /// What stands.
    outcome: TypedResultDocument,
    /// Why; everybody can read it.
    reason: String,
}

/// Points given or taken.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdjustmentBody {
    /// Whose.
    player: Uuid,
    /// For which week.
    week: u8,
    /// How many; negative takes.
    #[schema(example = -1)]
    amount: i32,
    /// Why; everybody can read it.
    reason: String,
}

/// The ruling behind an adjustment.
#[derive(Serialize, ToSchema)]
pub struct AdjustmentView {
    /// Named in the ledger.
    ruling: Uuid,
}

/// The games of a season, or of one week of it.
#[utoipa::path(tag = "results", params(InSeason, OfWeek), security((), ("bearer" = [])), responses((status = 200, body = Vec<GameView>), Problems))]
#[get("/games")]
pub async fn list_games(
    desk: Data<Desk>,
    who: Caller,
    path: Path<InSeason>,
    of: Query<OfWeek>,
) -> Answer<web::Json<Vec<GameView>>> {
    let (club, season) = path.ids();
    let games = app::results::list_games(&desk, who.0, club, season, of.week()?).await?;
    Ok(web::Json(games.into_iter().map(GameView::from).collect()))
}

/// One game.
#[utoipa::path(tag = "results", params(OneGame), security((), ("bearer" = [])), responses((status = 200, body = GameView), Problems))]
#[get("/games/{game}")]
pub async fn find_game(
    desk: Data<Desk>,
    who: Caller,
    path: Path<OneGame>,
) -> Answer<web::Json<GameView>> {
    let (club, season, game) = path.ids();
    Ok(web::Json(
        app::results::find_game(&desk, who.0, club, season, game)
            .await?
            .into(),
    ))
}

/// Report a result as counts; the server makes the score. A report of the other side that agrees
/// confirms it, one that does not disputes it. Needs an `Idempotency-Key`.
#[utoipa::path(
    tag = "results",
    params(OneGame, ("Idempotency-Key" = String, Header, description = "A new one for each new report")),
    responses((status = 200, body = SlipDocument), Problems)
)]
#[post("/games/{game}/report")]
pub async fn report_result(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<OneGame>,
    request: HttpRequest,
    body: Json<TypedResultDocument>,
) -> Answer<web::Json<SlipDocument>> {
    let (club, season, game) = path.ids();
    let command = ReportResult {
        key: idempotency_key(&request)?.ok_or_else(key_required)?,
        typed: body.0,
    };
    Ok(web::Json(
        app::results::report_result(&desk, who.0, club, season, game, command).await?,
    ))
}

/// The key, where there is one.
fn idempotency_key(request: &HttpRequest) -> Result<Option<String>, Problem> {
    let Some(key) = request.headers().get("idempotency-key") else {
        return Ok(None);
    };
    let key = key.to_str().ok();
    key.filter(|key| (1..=LONGEST_KEY).contains(&key.len()))
        .map(|key| Some(key.to_owned()))
        .ok_or_else(key_required)
}

fn key_required() -> Problem {
    let detail = format!("Send a header Idempotency-Key of 1 to {LONGEST_KEY} characters.");
    Refusal::rule(Reason::IdempotencyKeyRequired, detail).into()
}

/// Which report is meant.
#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct SeenReport {
    /// The report's `at`: 409 when the other side has reported anew since.
    pub reported_at: Option<DateTime<Utc>>,
}

/// Confirm the other side's report. Say which one was seen, so that a later one is not confirmed unseen.
#[utoipa::path(tag = "results", params(OneGame, SeenReport), responses((status = 200, body = SlipDocument), Problems))]
#[post("/games/{game}/confirm")]
pub async fn confirm_result(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<OneGame>,
    seen: Query<SeenReport>,
) -> Answer<web::Json<SlipDocument>> {
    let (club, season, game) = path.ids();
    let seen = seen.reported_at;
    Ok(web::Json(
        app::results::confirm_result(&desk, who.0, club, season, game, seen).await?,
    ))
}

/// Object to the other side's report. Nothing counts until a referee has ruled.
#[utoipa::path(tag = "results", params(OneGame), responses((status = 200, body = SlipDocument), Problems))]
#[post("/games/{game}/dispute")]
pub async fn dispute_result(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<OneGame>,
    body: Json<DisputeBody>,
) -> Answer<web::Json<SlipDocument>> {
    let (club, season, game) = path.ids();
    let DisputeBody { reason, counter } = body.0;
    let command = DisputeResult { reason, counter };
    Ok(web::Json(
        app::results::dispute_result(&desk, who.0, club, season, game, command).await?,
    ))
}

/// Rule on a game, whatever its slip says; never on one's own.
#[utoipa::path(tag = "results", params(OneGame), responses((status = 200, body = SlipDocument), Problems))]
#[post("/games/{game}/rule")]
pub async fn rule_result(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<OneGame>,
    body: Json<RulingBody>,
) -> Answer<web::Json<SlipDocument>> {
    let (club, season, game) = path.ids();
    let RulingBody { outcome, reason } = body.0;
    let command = RuleResult {
        typed: outcome,
        reason,
    };
    Ok(web::Json(
        app::results::rule_result(&desk, who.0, club, season, game, command).await?,
    ))
}

/// Give or take points by ruling: a line of its own in the ledger. Sent again with the same
/// `Idempotency-Key` it acts once.
#[utoipa::path(
    tag = "results",
    params(InSeason, ("Idempotency-Key" = Option<String>, Header, description = "A new one for each new ruling")),
    responses((status = 200, body = AdjustmentView), Problems)
)]
#[post("/adjustments")]
pub async fn adjust_points(
    desk: Data<Desk>,
    who: SignedIn,
    path: Path<InSeason>,
    request: HttpRequest,
    body: Json<AdjustmentBody>,
) -> Answer<web::Json<AdjustmentView>> {
    let (club, season) = path.ids();
    let body = body.0;
    let command = AdjustPoints {
        key: idempotency_key(&request)?,
        player: PlayerId(body.player),
        week: WeekNo::new(body.week).ok_or_else(|| Problem::wire(WireFault::NotFound))?,
        amount: body.amount,
        reason: body.reason,
    };
    let ruling = app::results::adjust_points(&desk, who.0, club, season, command).await?;
    Ok(web::Json(AdjustmentView { ruling: ruling.0 }))
}
