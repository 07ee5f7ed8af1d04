//! Frozen tables: snapshots of the standings after each change; of played weeks the rows alone, of closed
//! weeks with the ledger lines behind them.

use diesel::dsl::min;
use diesel::prelude::*;
use diesel::sql_types;
use diesel_async::RunQueryDsl;
use document::table::standings::FrozenTableDocument;
use league::keys::SeasonKey;
use league::time::Instant;
use league::week::WeekNo;

use crate::json::JsonColumn;
use crate::keys::{of_season, week_pk};
use crate::schema::frozen_tables;
use crate::week_no::{week_from_sql, week_to_sql};
use crate::{Conn, StoreError};

/// When and why a table was frozen.
#[derive(Clone, Debug)]
pub struct FrozenTableMeta {
    /// The week it is of.
    pub week: WeekNo,
    /// The season's version that it came with.
    pub version: i64,
    /// The act that made it.
    pub act: String,
    pub frozen_at: Instant,
    /// With the lines behind it: of a closed week.
    pub whole: bool,
}

/// What is wanted of a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TablePart {
    /// Its rows, which are kept of every version.
    Rows,
    /// The lines behind them, which are kept from the close of the week on.
    Lines,
}

/// In one statement, so that a table, which is long, is sent and read once.
const SAVE_IF_CHANGED: &str = "
    insert into frozen_tables
        (club_id, season_id, week_no, version, act, frozen_at, contents, whole)
    select $1, $2, $3, $4, $5, $6, $7, $8
    where (
        select contents = $7 and whole = $8 from frozen_tables
        where club_id = $1 and season_id = $2 and week_no = $3
        order by version desc limit 1
    ) is not true";

/// Keeps the table of a week, unless the newest that is kept of it is the same.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn save_if_changed(
    conn: &mut Conn,
    season: SeasonKey,
    frozen: &FrozenTableMeta,
    table: FrozenTableDocument,
) -> Result<(), StoreError> {
    let (club, season, week) = week_pk(season.week(frozen.week));
    diesel::sql_query(SAVE_IF_CHANGED)
        .bind::<sql_types::Uuid, _>(club)
        .bind::<sql_types::Uuid, _>(season)
        .bind::<sql_types::SmallInt, _>(week)
        .bind::<sql_types::BigInt, _>(frozen.version)
        .bind::<sql_types::Text, _>(&frozen.act)
        .bind::<sql_types::Timestamptz, _>(frozen.frozen_at)
        .bind::<sql_types::Jsonb, _>(JsonColumn(table))
        .bind::<sql_types::Bool, _>(frozen.whole)
        .execute(conn)
        .await?;
    Ok(())
}

/// The table of a week as it stood at a version of its season, and from which version on it was so;
/// without a week, of the last that has one.
///
/// # Errors
/// [`StoreError::NotFound`] where none was kept by then.
pub async fn find(
    conn: &mut Conn,
    season: SeasonKey,
    week: Option<WeekNo>,
    version: i64,
    part: TablePart,
) -> Result<(i64, FrozenTableDocument), StoreError> {
    let mut kept = frozen_tables::table
        .filter(of_season!(frozen_tables, season))
        .filter(frozen_tables::version.le(version))
        .order((frozen_tables::week_no.desc(), frozen_tables::version.desc()))
        .select((frozen_tables::version, frozen_tables::contents))
        .into_boxed();
    if let Some(week) = week {
        kept = kept.filter(frozen_tables::week_no.eq(week_to_sql(week)));
    }
    if part == TablePart::Lines {
        kept = kept.filter(frozen_tables::whole);
    }
    let (version, table): (i64, JsonColumn<FrozenTableDocument>) = kept.first(conn).await?;
    Ok((version, table.0))
}

/// The first version of a season for which a table of this week is kept, or of any week.
///
/// # Errors
/// [`StoreError::NotFound`] where none is kept.
pub async fn find_first_version(
    conn: &mut Conn,
    season: SeasonKey,
    week: Option<WeekNo>,
    part: TablePart,
) -> Result<i64, StoreError> {
    let mut kept = frozen_tables::table
        .filter(of_season!(frozen_tables, season))
        .select(min(frozen_tables::version))
        .into_boxed();
    if let Some(week) = week {
        kept = kept.filter(frozen_tables::week_no.eq(week_to_sql(week)));
    }
    if part == TablePart::Lines {
        kept = kept.filter(frozen_tables::whole);
    }
    let first: Option<i64> = kept.first(conn).await?;
    first.ok_or(StoreError::NotFound)
}

/// The tables of closed weeks, week by week, the oldest of each first.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list(mut conn: &Conn, season: SeasonKey) -> Result<Vec<FrozenTableMeta>, StoreError> {
    let rows: Vec<(i16, i64, String, Instant)> = frozen_tables::table
        .filter(of_season!(frozen_tables, season))
        .filter(frozen_tables::whole)
        .order((frozen_tables::week_no, frozen_tables::version))
        .select((
            frozen_tables::week_no,
            frozen_tables::version,
            frozen_tables::act,
            frozen_tables::frozen_at,
        ))
        .load(&mut conn)
        .await?;
    let frozen = |(week, version, act, frozen_at)| {
        Ok(FrozenTableMeta {
            week: week_from_sql(week)?,
            version,
            act,
            frozen_at,
            whole: true,
        })
    };
    rows.into_iter().map(frozen).collect()
}
