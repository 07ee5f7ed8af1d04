//! A season in one file: the public export, and the archive of a season that is over.

use actix_web::web::{Data, Path};
use actix_web::{HttpResponse, get, web};
use app::Desk;
use document::export::SeasonExportDocument;

use super::seasons::InSeason;
use crate::answer::Answer;
use crate::archive::{ArchiveBytes, take_home};
use crate::problem::Problems;
use crate::who::Caller;

/// Everything that may be known of a season, in one file. `tallyhost verify FILE` checks it offline:
/// receipts, draws, proofs, and every round paired again.
#[utoipa::path(tag = "seasons", params(InSeason), security((), ("bearer" = [])), responses((status = 200, body = SeasonExportDocument), Problems))]
#[get("/export")]
pub async fn export_season(
    desk: Data<Desk>,
    who: Caller,
    path: Path<InSeason>,
) -> Answer<web::Json<SeasonExportDocument>> {
    let (club, season) = path.ids();
    Ok(web::Json(
        app::seasons::export_season(&desk, who.0, club, season).await?,
    ))
}

/// The archive of a season that has ended, as a ZIP: `season.json` is its export, which
/// `tallyhost verify` checks; `standings.csv`, `ledger.csv`, `games.csv`, `painting.csv`,
/// `players.csv` and `awards.csv` are the same facts row by row. The `ETag` is the season's version.
#[utoipa::path(tag = "seasons", params(InSeason), security((), ("bearer" = [])), responses((status = 200, content_type = "application/zip", body = ArchiveBytes), Problems))]
#[get("/archive")]
pub async fn archive_season(
    desk: Data<Desk>,
    who: Caller,
    path: Path<InSeason>,
) -> Answer<HttpResponse> {
    let (club, season) = path.ids();
    let export = app::seasons::archive_season(&desk, who.0, club, season).await?;
    Ok(take_home(season, export).await?)
}
