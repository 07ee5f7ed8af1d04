//! API: the public export of a season, and the archive of a season that is over.

use actix_web::web::{Data, Path};
use actix_web::{HttpResponse, get, web};
use app::App;
use document::export::SeasonExportDocument;

use crate::archive::{ArchiveBytes, archive_response};
use crate::authentication::MaybeSignedIn;
use crate::paths::SeasonPath;
use crate::problem::ProblemResponses;
use crate::response::ApiResult;

/// Everything that may be known of a season, in one file. `tallyhost verify FILE` checks it offline:
/// receipts, draws, proofs, and every round paired again.
#[utoipa::path(tag = "seasons", params(SeasonPath), security((), ("bearer" = [])), responses((status = 200, body = SeasonExportDocument), ProblemResponses))]
#[get("/export")]
pub async fn export_season(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
) -> ApiResult<web::Json<SeasonExportDocument>> {
    let season = path.key();
    Ok(web::Json(
        app::seasons::export_season(&app, who.0, season).await?,
    ))
}

/// The archive of a season that has ended, as a ZIP: `season.json` is its export, which
/// `tallyhost verify` checks; `standings.csv`, `ledger.csv`, `games.csv`, `painting.csv`,
/// `players.csv` and `awards.csv` are the same facts row by row. The `ETag` is the season's version.
#[utoipa::path(tag = "seasons", params(SeasonPath), security((), ("bearer" = [])), responses((status = 200, content_type = "application/zip", body = ArchiveBytes), ProblemResponses))]
#[get("/archive")]
pub async fn archive_season(
    app: Data<App>,
    who: MaybeSignedIn,
    path: Path<SeasonPath>,
) -> ApiResult<HttpResponse> {
    let season = path.key();
    let export = app::seasons::archive_season(&app, who.0, season).await?;
    Ok(archive_response(season, export).await?)
}
