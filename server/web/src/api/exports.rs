//! A season in one file: the public export, and the archive of a season that is over.

use actix_web::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE, ETag, EntityTag};
use actix_web::web::{Data, Path};
use actix_web::{HttpResponse, get, web};
use app::{Desk, Refusal};
use document::export::SeasonExportDocument;
use document::sheet::csv;
use utoipa::ToSchema;

use super::seasons::InSeason;
use crate::answer::Answer;
use crate::archive::zip;
use crate::problem::Problems;
use crate::who::Caller;

/// A ZIP archive.
#[derive(ToSchema)]
#[schema(value_type = String, format = Binary)]
pub struct ArchiveBytes(Vec<u8>);

/// Everything that may be known of a season, in one file. `tallyhost verify FILE` checks it offline:
/// receipts, draws, proofs, and every round paired again.
#[utoipa::path(tag = "seasons", security((), ("bearer" = [])), responses((status = 200, body = SeasonExportDocument), Problems))]
#[get("/clubs/{club}/seasons/{season}/export")]
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
#[utoipa::path(tag = "seasons", security((), ("bearer" = [])), responses((status = 200, content_type = "application/zip", body = ArchiveBytes), Problems))]
#[get("/clubs/{club}/seasons/{season}/archive")]
pub async fn archive_season(
    desk: Data<Desk>,
    who: Caller,
    path: Path<InSeason>,
) -> Answer<HttpResponse> {
    let (club, season) = path.ids();
    let export = app::seasons::archive_season(&desk, who.0, club, season).await?;
    let version = export.version;
    let archive = web::block(move || archive(&export)).await;
    let archive = archive.map_err(|cause| broken(&cause))??;
    let tag = EntityTag::new_strong(version.to_string());
    Ok(HttpResponse::Ok()
        .insert_header((CONTENT_TYPE, "application/zip"))
        .insert_header((
            CONTENT_DISPOSITION,
            format!("attachment; filename=\"season-{season}.zip\""),
        ))
        .insert_header(ETag(tag))
        .body(archive.0))
}

fn archive(export: &SeasonExportDocument) -> Result<ArchiveBytes, Refusal> {
    let json = serde_json::to_vec_pretty(export).map_err(|cause| broken(&cause))?;
    let mut files = vec![("season.json".to_owned(), json)];
    for table in export.tables() {
        let rows = csv(&table).map_err(|cause| broken(&cause))?;
        files.push((format!("{}.csv", table.name), rows));
    }
    let bytes = zip(files).map_err(|cause| broken(&cause))?;
    Ok(ArchiveBytes(bytes))
}

fn broken(cause: &impl std::fmt::Display) -> Refusal {
    Refusal::Broken(format!("archive: {cause}"))
}
