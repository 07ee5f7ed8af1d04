//! Tables of closed weeks as they were. A row of the database each, they are not kept here.

use actix_web::HttpRequest;
use app::standings::{FrozenTable, find_frozen_table};
use league::week::WeekNo;

use crate::addresses::{InSeason, OnePlayer};
use crate::format::Format;
use crate::once::answer_once;
use crate::reads::Answer;
use crate::resource::write;
use crate::sheets::{embedded_table, frozen_ledger, frozen_standings};
use crate::shelf::{Key, Shelf};
use crate::turned::Turned;

/// The table of a week as it stood at a version.
///
/// # Errors
/// 404 where the week was not closed yet, 503 where this process has not got to the version.
pub async fn standings(
    shelf: &Shelf,
    path: &InSeason,
    week: WeekNo,
    version: i64,
    request: &HttpRequest,
) -> Answer {
    let format = Format::of(&path.ending, request)?;
    let table = frozen_standings(find(shelf, path.key(), week, version).await?);
    let body = match format {
        Format::Html => embedded_table(table)?,
        _ => write(&table, format)?,
    };
    Ok(answer_once(request, format, body))
}

/// The lines behind a player's total as they stood at a version.
///
/// # Errors
/// As [`standings`]; 404 also for a player without a row.
pub async fn ledger(
    shelf: &Shelf,
    path: &OnePlayer,
    week: WeekNo,
    version: i64,
    request: &HttpRequest,
) -> Answer {
    let format = Format::of(&path.ending, request)?;
    let frozen = find(shelf, path.key(), week, version).await?;
    let body = write(&frozen_ledger(frozen, path.player())?, format)?;
    Ok(answer_once(request, format, body))
}

async fn find(shelf: &Shelf, key: Key, week: WeekNo, version: i64) -> Result<FrozenTable, Turned> {
    shelf.catch_up(key, version).await?;
    Ok(find_frozen_table(shelf.desk(), None, key.0, key.1, week, version).await?)
}
