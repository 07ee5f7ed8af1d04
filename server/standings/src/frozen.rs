//! Tables as they were. A row of the database each, they are not kept here.

use actix_web::HttpRequest;
use app::Refusal;
use app::standings::{FrozenTable, Part, find_frozen_table};
use league::week::WeekNo;

use crate::addresses::{InSeason, OnePlayer};
use crate::format::Format;
use crate::once::answer_once;
use crate::reads::Answer;
use crate::resource::write;
use crate::sheets::{embedded_table, frozen_ledger, frozen_standings};
use crate::shelf::{Key, Shelf};
use crate::turned::Turned;

/// The table of a week, or of the last that was paired by then, as it stood at a version.
///
/// # Errors
/// 404 where there is no such version, 503 where a replica has not got so far.
pub async fn standings(
    shelf: &Shelf,
    path: &InSeason,
    week: Option<WeekNo>,
    version: i64,
    request: &HttpRequest,
) -> Answer {
    let format = Format::of(&path.ending, request)?;
    let table = frozen_standings(find(shelf, path.key(), week, version, Part::Rows).await?);
    let body = match format {
        Format::Html => embedded_table(table)?,
        _ => write(&table, format)?,
    };
    Ok(answer_once(request, format, body))
}

/// The lines behind a player's total as they stood at a version; from the close of the week on they are
/// kept.
///
/// # Errors
/// As [`standings`]; 404 also for a player without a row.
pub async fn ledger(
    shelf: &Shelf,
    path: &OnePlayer,
    week: Option<WeekNo>,
    version: i64,
    request: &HttpRequest,
) -> Answer {
    let format = Format::of(&path.ending, request)?;
    let frozen = find(shelf, path.key(), week, version, Part::Lines).await?;
    let body = write(&frozen_ledger(frozen, path.player())?, format)?;
    Ok(answer_once(request, format, body))
}

async fn find(
    shelf: &Shelf,
    key: Key,
    week: Option<WeekNo>,
    version: i64,
    part: Part,
) -> Result<FrozenTable, Turned> {
    match shelf.catch_up(key, version).await {
        // Nobody has got so far yet.
        Err(Refusal::Unavailable { .. }) if shelf.desk().reads_primary() => {}
        caught_up => caught_up?,
    }
    Ok(find_frozen_table(shelf.desk(), None, key, week, version, part).await?)
}
