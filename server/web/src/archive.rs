//! A season that is over as one archive (PKWARE APPNOTE 6.3, section 4): the same season makes the
//! same bytes.

use std::fmt::Display;
use std::io::{Cursor, Write};

use actix_web::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE, ETag, EntityTag};
use actix_web::{HttpResponse, web};
use app::Refusal;
use document::csv::table::write_csv;
use document::export::SeasonExportDocument;
use league::keys::SeasonKey;
use utoipa::ToSchema;
use zip::result::ZipResult;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, ZipWriter};

/// A ZIP archive.
#[derive(ToSchema)]
#[schema(value_type = String, format = Binary)]
pub struct ArchiveBytes(Vec<u8>);

/// 200 with the archive as a download. The `ETag` is the season's version.
///
/// # Errors
/// [`Refusal::Internal`] for more than an archive can hold.
pub async fn archive_response(
    season: SeasonKey,
    export: SeasonExportDocument,
) -> Result<HttpResponse, Refusal> {
    let version = EntityTag::new_strong(export.version.to_string());
    let bytes = web::block(move || build_archive(&export)).await;
    let bytes = bytes.map_err(|cause| internal(&cause))??;
    let name = format!("attachment; filename=\"season-{}.zip\"", season.season);
    Ok(HttpResponse::Ok()
        .insert_header((CONTENT_TYPE, "application/zip"))
        .insert_header((CONTENT_DISPOSITION, name))
        .insert_header(ETag(version))
        .body(bytes.0))
}

/// The export, and the same facts row by row.
fn build_archive(export: &SeasonExportDocument) -> Result<ArchiveBytes, Refusal> {
    let json = serde_json::to_vec_pretty(export).map_err(|cause| internal(&cause))?;
    let mut files = vec![("season.json".to_owned(), json)];
    for table in export.tables() {
        let rows = write_csv(&table).map_err(|cause| internal(&cause))?;
        files.push((format!("{}.csv", table.name), rows));
    }
    zip(files)
        .map(ArchiveBytes)
        .map_err(|cause| internal(&cause))
}

fn zip(files: Vec<(String, Vec<u8>)>) -> ZipResult<Vec<u8>> {
    let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
    let options = SimpleFileOptions::default()
        .compression_method(CompressionMethod::Deflated)
        .last_modified_time(DateTime::default());
    for (name, bytes) in files {
        archive.start_file(name, options)?;
        archive.write_all(&bytes)?;
    }
    Ok(archive.finish()?.into_inner())
}

fn internal(cause: &impl Display) -> Refusal {
    Refusal::Internal(format!("archive: {cause}"))
}
