//! API: outlooks on the table: what-if, reachable ranks, forecast.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::standings::SeasonForecast;
use app::{App, Fault, Reason, Refusal};
use document::table::statistics::{IntervalDocument, ReachDocument, SuppositionDocument};
use league::standings::Supposition;
use messages::{requests, results};
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};
use uuid::Uuid;

use super::games::WeekQuery;
use super::standings::{StandingsView, standings_view};
use crate::authentication::MaybeSignedIn;
use crate::body::Json;
use crate::paths::{PlayerPath, SeasonPath};
use crate::problem::{Problem, ProblemResponses};
use crate::query_parameters::Query;
use crate::response::{ApiResult, Versioned};

const MAX_RUNS: u32 = 100_000;
/// What a client keeps in 64 bits with a sign.
const MAX_SEED: u64 = i64::MAX.unsigned_abs();

/// Supposed results.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct WhatIfBody {
    /// Of open games; of two for one game the later counts.
    suppositions: Vec<SuppositionDocument>,
}

/// Which rank.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct RankQuery {
    /// That rank or a better one; the first when absent.
    #[param(minimum = 1)]
    rank: Option<u32>,
}

/// How to simulate.
#[derive(Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
pub struct SimulationQuery {
    /// That rank or a better one; the first when absent.
    #[param(minimum = 1)]
    rank: Option<u32>,
    /// The same seed on the same facts gives the same answer; 1 when absent.
    #[param(minimum = 0, maximum = 9_223_372_036_854_775_807_i64)]
    seed: Option<u64>,
    /// How often to play the rest of the season; fewer in a large season, 5000 when absent.
    #[param(minimum = 1, maximum = 100_000)]
    runs: Option<u32>,
}

/// How likely ranks are, if every result that the scoring knows is equally likely and rounds to come
/// are paired at random.
#[derive(Serialize, ToSchema)]
pub struct ForecastView {
    /// The season's version that it belongs to; also the `ETag`.
    version: i64,
    /// Last week that is paired.
    as_of: u8,
    /// Rounds supposed.
    rounds_to_come: u8,
    /// The rank asked for.
    rank: u32,
    /// The seed.
    seed: u64,
    /// How often the rest of the season was played.
    runs: u32,
    /// Everybody in the table.
    players: Vec<PlayerForecastView>,
}

/// One player's part of a forecast.
#[derive(Serialize, ToSchema)]
pub struct PlayerForecastView {
    /// Who.
    player: Uuid,
    /// Runs that ended at that rank or a better one, with the error of the simulation: the 95 %
    /// interval (Wilson).
    at_rank: IntervalDocument,
    /// Runs that ended at each rank, from the first.
    ended: Vec<u32>,
}

/// The table if open games ended as supposed. Nothing is saved.
#[utoipa::path(tag = "standings", params(SeasonPath, WeekQuery), security((), ("bearer" = [])), responses((status = 200, body = StandingsView), ProblemResponses))]
#[post("/what-if")]
pub async fn find_what_if(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
    of: Query<WeekQuery>,
    body: Json<WhatIfBody>,
) -> ApiResult<Versioned<StandingsView>> {
    let season = path.key();
    let (week, supposed) = (of.week()?, parse_suppositions(body.0)?);
    let found = app::standings::find_what_if(&app, who.0, season, week, supposed).await?;
    Ok(standings_view(found))
}

fn parse_suppositions(body: WhatIfBody) -> Result<Vec<Supposition>, Problem> {
    let mut faults = Vec::new();
    let mut supposed = Vec::new();
    for (at, document) in body.suppositions.into_iter().enumerate() {
        match Supposition::try_from(document) {
            Ok(parse_suppositions) => supposed.push(parse_suppositions),
            Err(found) => faults.extend(found.into_iter().map(|fault| {
                let pointer = format!("/suppositions/{at}/outcome/score{}", fault.pointer);
                Fault::from(document::fault::DocumentFault { pointer, ..fault })
            })),
        }
    }
    if faults.is_empty() {
        Ok(supposed)
    } else {
        let message = results::suppositions_faults();
        Err(Refusal::faults(Reason::Validation, message, faults).into())
    }
}

/// Whether a player can still reach a rank, and what it takes; exact, once all rounds are paired.
#[utoipa::path(tag = "standings", params(PlayerPath, RankQuery), security((), ("bearer" = [])), responses((status = 200, body = ReachDocument), ProblemResponses))]
#[get("/players/{player}/reach")]
pub async fn find_reach(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<PlayerPath>,
    of: Query<RankQuery>,
) -> ApiResult<Versioned<ReachDocument>> {
    let (season, player) = path.ids();
    let rank = of.rank.unwrap_or(1);
    let found = app::standings::find_reach(&app, who.0, season, player, rank).await?;
    Ok(Versioned {
        version: found.version,
        view: found.reach.into(),
    })
}

/// How likely a rank is for everybody, with the error of the simulation.
#[utoipa::path(tag = "standings", params(SeasonPath, SimulationQuery), security((), ("bearer" = [])), responses((status = 200, body = ForecastView), ProblemResponses))]
#[get("/forecast")]
pub async fn find_forecast(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
    of: Query<SimulationQuery>,
) -> ApiResult<Versioned<ForecastView>> {
    let season = path.key();
    let (rank, seed) = (of.rank.unwrap_or(1), of.seed.unwrap_or(1));
    let runs = of.runs.unwrap_or(5_000);
    if !(1..=MAX_RUNS).contains(&runs) {
        return Err(Problem::out_of_range("runs", 1..=MAX_RUNS, runs));
    }
    if seed > MAX_SEED {
        let detail = requests::parameter_number("seed");
        return Err(Problem::parameter("seed").actual(seed).detail(detail));
    }
    let found = app::standings::find_forecast(&app, who.0, season, seed, runs).await?;
    let ranks = u32::try_from(found.forecasts.len()).unwrap_or(u32::MAX);
    // A table without rows has no rank to ask for, and is answered as it is.
    if ranks > 0 && !(1..=ranks).contains(&rank) {
        return Err(Problem::out_of_range("rank", 1..=ranks, rank));
    }
    Ok(forecast_view(&found, rank, seed))
}

fn forecast_view(found: &SeasonForecast, rank: u32, seed: u64) -> Versioned<ForecastView> {
    let players = found.forecasts.iter().filter_map(|forecast| {
        Some(PlayerForecastView {
            player: forecast.player.0,
            at_rank: forecast.at_least(rank)?.into(),
            ended: forecast.ended.clone(),
        })
    });
    Versioned {
        version: found.version,
        view: ForecastView {
            version: found.version,
            as_of: found.as_of.number(),
            rounds_to_come: found.rounds_to_come,
            rank,
            seed,
            runs: found.runs,
            players: players.collect(),
        },
    }
}
