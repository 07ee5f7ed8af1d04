//! Standings and the ledger behind them.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::Desk;
use app::standings::SeasonStandings;
use document::ledger::LineDocument;
use document::standings::NamedRowDocument;
use serde::Serialize;
use utoipa::ToSchema;

use super::games::OfWeek;
use super::players::OnePlayer;
use super::seasons::InSeason;
use super::weeks::InWeek;
use crate::answer::{Answer, Done, Versioned};
use crate::problem::Problems;
use crate::query::Query;
use crate::who::{Caller, SignedIn};

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
#[utoipa::path(tag = "standings", params(InSeason, OfWeek), security((), ("bearer" = [])), responses((status = 200, body = StandingsView), Problems))]
#[get("/standings")]
pub async fn find_standings(
    desk: Data<Desk>,
    who: Caller,
    path: Path<InSeason>,
    of: Query<OfWeek>,
) -> Answer<Versioned<StandingsView>> {
    let (club, season) = path.ids();
    let week = of.week()?;
    let found = app::standings::find_standings(&desk, who.0, club, season, week).await?;
    Ok(standings_view(found))
}

/// Every line behind one player's row.
#[utoipa::path(tag = "standings", params(OnePlayer, OfWeek), security((), ("bearer" = [])), responses((status = 200, body = LedgerView), Problems))]
#[get("/players/{player}/ledger")]
pub async fn find_ledger(
    desk: Data<Desk>,
    who: Caller,
    path: Path<OnePlayer>,
    of: Query<OfWeek>,
) -> Answer<Versioned<LedgerView>> {
    let (club, season, player) = path.ids();
    let week = of.week()?;
    let found = app::standings::find_ledger(&desk, who.0, club, season, player, week).await?;
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
#[utoipa::path(tag = "weeks", params(InWeek), responses((status = 204, description = "Closed"), Problems))]
#[post("/weeks/{week}/close")]
pub async fn close_week(desk: Data<Desk>, who: SignedIn, path: Path<InWeek>) -> Answer<Done> {
    let (club, season, week) = path.ids()?;
    app::standings::close_week(&desk, who.0, club, season, week).await?;
    Ok(Done)
}
