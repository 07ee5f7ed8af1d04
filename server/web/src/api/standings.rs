//! API: standings, the ledger behind them, closing a week.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::App;
use app::standings::SeasonStandings;
use document::table::ledger::LineDocument;
use document::table::standings::NamedRowDocument;
use serde::Serialize;
use utoipa::ToSchema;

use super::games::WeekQuery;
use crate::authentication::{MaybeSignedIn, SignedIn};
use crate::paths::{PlayerPath, SeasonPath, WeekPath};
use crate::problem::ProblemResponses;
use crate::query_parameters::Query;
use crate::response::{ApiResult, NoContent, Versioned};

/// The table as of a week.
#[derive(Serialize, ToSchema)]
pub struct StandingsView {
    /// The season's version that it belongs to; also the `ETag`.
    version: i64,
    /// Last week that counts.
    as_of: u8,
    /// In the order of the table.
    rows: Vec<NamedRowDocument>,
}

/// Every line behind one row.
#[derive(Serialize, ToSchema)]
pub struct LedgerView {
    /// The season's version that it belongs to; also the `ETag`.
    version: i64,
    /// The sum of the lines.
    total: i32,
    /// Week by week.
    lines: Vec<LineDocument>,
}

/// A table with its players' names.
pub fn standings_view(found: SeasonStandings) -> Versioned<StandingsView> {
    let version = found.season.version;
    Versioned {
        version,
        view: StandingsView {
            version,
            as_of: found.standings.as_of.number(),
            rows: found.rows(),
        },
    }
}

/// The table after a week, or after the last week that was paired.
#[utoipa::path(tag = "standings", params(SeasonPath, WeekQuery), security((), ("bearer" = [])), responses((status = 200, body = StandingsView), ProblemResponses))]
#[get("/standings")]
pub async fn find_standings(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
    of: Query<WeekQuery>,
) -> ApiResult<Versioned<StandingsView>> {
    let season = path.key();
    let week = of.week()?;
    let found = app::standings::find_standings(&app, who.0, season, week).await?;
    Ok(standings_view(found))
}

/// Every line behind one player's row.
#[utoipa::path(tag = "standings", params(PlayerPath, WeekQuery), security((), ("bearer" = [])), responses((status = 200, body = LedgerView), ProblemResponses))]
#[get("/players/{player}/ledger")]
pub async fn find_ledger(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<PlayerPath>,
    of: Query<WeekQuery>,
) -> ApiResult<Versioned<LedgerView>> {
    let (season, player) = path.ids();
    let week = of.week()?;
    let found = app::standings::find_ledger(&app, who.0, season, player, week).await?;
    let (version, total) = (found.version, found.total.get());
    let lines = found.lines.iter().map(LineDocument::from).collect();
    Ok(Versioned {
        version,
        view: LedgerView {
            version,
            total,
            lines,
        },
    })
}

/// Close a week: its table stands. Later rulings make a new version.
#[utoipa::path(tag = "weeks", params(WeekPath), responses((status = 204, description = "Closed"), ProblemResponses))]
#[post("/weeks/{week}/close")]
pub async fn close_week(
    app: Data<App>,
    who: SignedIn,
    path: Path<WeekPath>,
) -> ApiResult<NoContent> {
    let week = path.key()?;
    app::standings::close_week(&app, who.0, week).await?;
    Ok(NoContent)
}
