//! Tables as they were: of weeks that are played without the lines behind them, of closed weeks whole.

use diesel::dsl::min;
use diesel::prelude::*;
use diesel::sql_types;
use diesel_async::RunQueryDsl;
use document::standings::FrozenTableDocument;
use league::ids::{ClubId, SeasonId};
use league::time::Instant;
use league::week::WeekNo;

use crate::json::Json;
use crate::schema::frozen_tables;
use crate::weeks::{number, week_no};
use crate::{Conn, Fault};

/// When and why a table was frozen.
#[derive(Clone, Debug)]
pub struct Frozen {
    /// The week it is of.
    pub week: WeekNo,
    /// The season's version that it came with.
    pub version: i64,
    /// The act that made it.
    pub act: String,
    /// When.
    pub frozen_at: Instant,
    /// With the lines behind it: of a closed week.
    pub whole: bool,
}

/// What is wanted of a table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Its rows, which are kept of every version.
    Rows,
    /// The lines behind them, which are kept from the close of the week on.
    Lines,
}

/// In one statement, so that a table, which is long, is sent and read once.
const KEEP: &str = "
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
/// A [`Fault`] of the database.
pub async fn keep(
    conn: &mut Conn,
    club: ClubId,
    season: SeasonId,
    frozen: &Frozen,
    table: FrozenTableDocument,
) -> Result<(), Fault> {
    diesel::sql_query(KEEP)
        .bind::<sql_types::Uuid, _>(club.0)
        .bind::<sql_types::Uuid, _>(season.0)
        .bind::<sql_types::SmallInt, _>(number(frozen.week))
        .bind::<sql_types::BigInt, _>(frozen.version)
        .bind::<sql_types::Text, _>(&frozen.act)
        .bind::<sql_types::Timestamptz, _>(frozen.frozen_at)
        .bind::<sql_types::Jsonb, _>(Json(table))
        .bind::<sql_types::Bool, _>(frozen.whole)
        .execute(conn)
        .await?;
    Ok(())
}

/// The table of a week as it stood at a version of its season, and from which version on it was so;
/// without a week, of the last that has one.
///
/// # Errors
/// [`Fault::NotFound`] where none was kept by then.
pub async fn find(
    conn: &mut Conn,
    club: ClubId,
    season: SeasonId,
    week: Option<WeekNo>,
    version: i64,
    part: Part,
) -> Result<(i64, FrozenTableDocument), Fault> {
    let mut kept = frozen_tables::table
        .filter(frozen_tables::club_id.eq(club.0))
        .filter(frozen_tables::season_id.eq(season.0))
        .filter(frozen_tables::version.le(version))
        .order((frozen_tables::week_no.desc(), frozen_tables::version.desc()))
        .select((frozen_tables::version, frozen_tables::contents))
        .into_boxed();
    if let Some(week) = week {
        kept = kept.filter(frozen_tables::week_no.eq(number(week)));
    }
    if part == Part::Lines {
        kept = kept.filter(frozen_tables::whole);
    }
    let (version, table): (i64, Json<FrozenTableDocument>) = kept.first(conn).await?;
    Ok((version, table.0))
}

/// The first version of a season for which a table of this week is kept, or of any week.
///
/// # Errors
/// [`Fault::NotFound`] where none is kept.
pub async fn find_first(
    conn: &mut Conn,
    club: ClubId,
    season: SeasonId,
    week: Option<WeekNo>,
    part: Part,
) -> Result<i64, Fault> {
    let mut kept = frozen_tables::table
        .filter(frozen_tables::club_id.eq(club.0))
        .filter(frozen_tables::season_id.eq(season.0))
        .select(min(frozen_tables::version))
        .into_boxed();
    if let Some(week) = week {
        kept = kept.filter(frozen_tables::week_no.eq(number(week)));
    }
    if part == Part::Lines {
        kept = kept.filter(frozen_tables::whole);
    }
    let first: Option<i64> = kept.first(conn).await?;
    first.ok_or(Fault::NotFound)
}

/// The tables of closed weeks, week by week, the oldest of each first.
///
/// # Errors
/// A [`Fault`] of the database.
pub async fn list(mut conn: &Conn, club: ClubId, season: SeasonId) -> Result<Vec<Frozen>, Fault> {
    let rows: Vec<(i16, i64, String, Instant)> = frozen_tables::table
        .filter(frozen_tables::club_id.eq(club.0))
        .filter(frozen_tables::season_id.eq(season.0))
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
        Ok(Frozen {
            week: week_no(week)?,
            version,
            act,
            frozen_at,
            whole: true,
        })
    };
    rows.into_iter().map(frozen).collect()
}
