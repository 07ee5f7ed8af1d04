//! Handlers: tables as they stood at an older version. Few ask for them, so each is read from the database.

use actix_web::HttpRequest;
use app::standings::{FrozenTable, TablePart, find_frozen_table};
use league::keys::SeasonKey;
use league::week::WeekNo;

use crate::cache::page_cache::PageCache;
use crate::http::format::Format;
use crate::http::parameters::{PublicPlayerPath, PublicSeasonPath};
use crate::http::read_error::ReadError;
use crate::http::read_error::ReadResult;
use crate::http::uncached_response::respond_uncached;
use crate::resources::render_rows;
use crate::resources::{frozen_ledger, frozen_standings, standings_html};

/// The table of a week, or of the last that was paired by then, as it stood at a version.
///
/// # Errors
/// 404 where there is no such version, 503 where a replica has not got so far.
pub async fn standings(
    cache: &PageCache,
    path: &PublicSeasonPath,
    week: Option<WeekNo>,
    version: i64,
    request: &HttpRequest,
) -> ReadResult {
    let format = Format::from_request(&path.ending, request)?;
    let table = frozen_standings(find(cache, path.key(), week, version, TablePart::Rows).await?);
    let body = match format {
        Format::Html(language) => standings_html(table, language)?,
        _ => render_rows(&table, format)?,
    };
    Ok(respond_uncached(request, format, body))
}

/// The lines behind a player's total as they stood at a version; from the close of the week on they are
/// kept.
///
/// # Errors
/// As [`standings`]; 404 also for a player without a row.
pub async fn ledger(
    cache: &PageCache,
    path: &PublicPlayerPath,
    week: Option<WeekNo>,
    version: i64,
    request: &HttpRequest,
) -> ReadResult {
    let format = Format::from_request(&path.ending, request)?;
    let frozen = find(cache, path.key(), week, version, TablePart::Lines).await?;
    let body = render_rows(&frozen_ledger(frozen, path.player())?, format)?;
    Ok(respond_uncached(request, format, body))
}

async fn find(
    cache: &PageCache,
    key: SeasonKey,
    week: Option<WeekNo>,
    version: i64,
    part: TablePart,
) -> Result<FrozenTable, ReadError> {
    cache.catch_up(key, version).await?;
    Ok(find_frozen_table(cache.app(), None, key, week, version, part).await?)
}
