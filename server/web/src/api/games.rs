//! API: games, result slips and point adjustments.

use actix_web::web::{Data, Path};
use actix_web::{HttpRequest, get, post, web};
use app::results::{AdjustPoints, DisputeResult, GameRow, ReportResult, RuleResult};
use app::{App, Reason, Refusal};
use chrono::{DateTime, Utc};
use document::results::{SlipDocument, TypedResultDocument};
use league::ids::PlayerId;
use league::week::WeekNo;
use messages::requests;
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

use crate::authentication::{MaybeSignedIn, SignedIn};
use crate::body::Json;
use crate::paths::{GamePath, SeasonPath};
use crate::problem::{HttpFault, Problem, ProblemResponses};
use crate::query_parameters::Query;
use crate::response::ApiResult;

const MAX_KEY_CHARS: usize = 128;

/// Which week.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct WeekQuery {
    /// The week, from 1; all of them when absent.
    #[param(minimum = 1, maximum = 52)]
    week: Option<u8>,
}

impl WeekQuery {
    /// # Errors
    /// 404 for a number that no season has.
    pub fn week(&self) -> Result<Option<WeekNo>, Problem> {
        let number = |week| WeekNo::new(week).ok_or_else(|| Problem::http(HttpFault::NotFound));
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

impl From<GameRow> for GameView {
    fn from(game: GameRow) -> Self {
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
    #[schema(
        example = "We counted the second bridge for Merrowick",
        min_length = 1,
        max_length = 4000
    )]
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
    #[schema(min_length = 1, max_length = 4000)]
    reason: String,
}

/// Points given or taken.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AdjustmentBody {
    /// Whose.
    player: Uuid,
    /// For which week.
    #[schema(minimum = 1, maximum = 52)]
    week: u8,
    /// How many; negative takes, and nothing is neither.
    #[schema(example = -1, minimum = -1000, maximum = 1000)]
    amount: i32,
    /// Why; everybody can read it.
    #[schema(min_length = 1, max_length = 4000)]
    reason: String,
}

/// The ruling behind an adjustment.
#[derive(Serialize, ToSchema)]
pub struct AdjustmentView {
    /// Named in the ledger.
    ruling: Uuid,
}

/// The games of a season, or of one week of it.
#[utoipa::path(tag = "results", params(SeasonPath, WeekQuery), security((), ("bearer" = [])), responses((status = 200, body = Vec<GameView>), ProblemResponses))]
#[get("/games")]
pub async fn list_games(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
    of: Query<WeekQuery>,
) -> ApiResult<web::Json<Vec<GameView>>> {
    let season = path.key();
    let games = app::results::list_games(&app, who.0, season, of.week()?).await?;
    Ok(web::Json(games.into_iter().map(GameView::from).collect()))
}

/// One game.
#[utoipa::path(tag = "results", params(GamePath), security((), ("bearer" = [])), responses((status = 200, body = GameView), ProblemResponses))]
#[get("/games/{game}")]
pub async fn find_game(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<GamePath>,
) -> ApiResult<web::Json<GameView>> {
    let game = path.key();
    Ok(web::Json(
        app::results::find_game(&app, who.0, game).await?.into(),
    ))
}

/// Report a result as counts; the server makes the score. A report of the other side that agrees
/// confirms it, one that does not disputes it. Needs an `Idempotency-Key`.
#[utoipa::path(
    tag = "results",
    params(GamePath, ("Idempotency-Key" = String, Header, description = "A new one for each new report")),
    responses((status = 200, body = SlipDocument), ProblemResponses)
)]
#[post("/games/{game}/report")]
pub async fn report_result(
    app: Data<App>,
    who: SignedIn,
    path: Path<GamePath>,
    request: HttpRequest,
    body: Json<TypedResultDocument>,
) -> ApiResult<web::Json<SlipDocument>> {
    let game = path.key();
    let command = ReportResult {
        key: idempotency_key(&request)?.ok_or_else(key_required)?,
        typed: body.0,
    };
    Ok(web::Json(
        app::results::report_result(&app, who.0, game, command).await?,
    ))
}

/// The key, where there is one.
fn idempotency_key(request: &HttpRequest) -> Result<Option<String>, Problem> {
    let Some(key) = request.headers().get("idempotency-key") else {
        return Ok(None);
    };
    let key = key.to_str().ok();
    key.filter(|key| (1..=MAX_KEY_CHARS).contains(&key.len()))
        .map(|key| Some(key.to_owned()))
        .ok_or_else(key_required)
}

fn key_required() -> Problem {
    let message = requests::idempotency_key_needed(MAX_KEY_CHARS);
    Refusal::rule(Reason::IdempotencyKeyRequired, message).into()
}

/// Which report is meant.
#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct ConfirmQuery {
    /// The report's `at`: 409 when the other side has reported anew since.
    pub reported_at: Option<DateTime<Utc>>,
}

/// Confirm the other side's report. Say which one was seen, so that a later one is not confirmed unseen.
#[utoipa::path(tag = "results", params(GamePath, ConfirmQuery), responses((status = 200, body = SlipDocument), ProblemResponses))]
#[post("/games/{game}/confirm")]
pub async fn confirm_result(
    app: Data<App>,
    who: SignedIn,
    path: Path<GamePath>,
    seen: Query<ConfirmQuery>,
) -> ApiResult<web::Json<SlipDocument>> {
    let game = path.key();
    let seen = seen.reported_at;
    Ok(web::Json(
        app::results::confirm_result(&app, who.0, game, seen).await?,
    ))
}

/// Object to the other side's report. Nothing counts until a referee has ruled.
#[utoipa::path(tag = "results", params(GamePath), responses((status = 200, body = SlipDocument), ProblemResponses))]
#[post("/games/{game}/dispute")]
pub async fn dispute_result(
    app: Data<App>,
    who: SignedIn,
    path: Path<GamePath>,
    body: Json<DisputeBody>,
) -> ApiResult<web::Json<SlipDocument>> {
    let game = path.key();
    let DisputeBody { reason, counter } = body.0;
    let command = DisputeResult { reason, counter };
    Ok(web::Json(
        app::results::dispute_result(&app, who.0, game, command).await?,
    ))
}

/// Rule on a game, whatever its slip says; never on one's own.
#[utoipa::path(tag = "results", params(GamePath), responses((status = 200, body = SlipDocument), ProblemResponses))]
#[post("/games/{game}/rule")]
pub async fn rule_result(
    app: Data<App>,
    who: SignedIn,
    path: Path<GamePath>,
    body: Json<RulingBody>,
) -> ApiResult<web::Json<SlipDocument>> {
    let game = path.key();
    let RulingBody { outcome, reason } = body.0;
    let command = RuleResult {
        typed: outcome,
        reason,
    };
    Ok(web::Json(
        app::results::rule_result(&app, who.0, game, command).await?,
    ))
}

/// Give or take points by ruling: a line of its own in the ledger. Sent again with the same
/// `Idempotency-Key` it acts once.
#[utoipa::path(
    tag = "results",
    params(SeasonPath, ("Idempotency-Key" = Option<String>, Header, description = "A new one for each new ruling")),
    responses((status = 200, body = AdjustmentView), ProblemResponses)
)]
#[post("/adjustments")]
pub async fn adjust_points(
    app: Data<App>,
    who: SignedIn,
    path: Path<SeasonPath>,
    request: HttpRequest,
    body: Json<AdjustmentBody>,
) -> ApiResult<web::Json<AdjustmentView>> {
    let season = path.key();
    let body = body.0;
    let command = AdjustPoints {
        key: idempotency_key(&request)?,
        player: PlayerId(body.player),
        week: WeekNo::new(body.week).ok_or_else(|| Problem::http(HttpFault::NotFound))?,
        amount: body.amount,
        reason: body.reason,
    };
    let ruling = app::results::adjust_points(&app, who.0, season, command).await?;
    Ok(web::Json(AdjustmentView { ruling: ruling.0 }))
}
