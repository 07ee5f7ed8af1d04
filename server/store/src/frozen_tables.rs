//! Tables as they were: of weeks that are played without the lines behind them, of closed weeks whole.

use diesel::dsl::min;
use diesel::prelude::*;
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

/// Keeps the table of a week, unless the newest that is kept of it is the same.
///
/// # Errors
/// A [`Fault`] of the database.
pub async fn keep(
    conn: &mut Conn,
    club: ClubId,
    season: SeasonId,
    frozen: &Frozen,
    table: &FrozenTableDocument,
) -> Result<(), Fault> {
    let contents = Json(table.clone());
    let same = frozen_tables::contents.eq(&contents);
    let is_kept: Option<bool> = frozen_tables::table
        .filter(frozen_tables::club_id.eq(club.0))
        .filter(frozen_tables::season_id.eq(season.0))
        .filter(frozen_tables::week_no.eq(number(frozen.week)))
        .order(frozen_tables::version.desc())
        .select(same.and(frozen_tables::whole.eq(frozen.whole)))
        .first(conn)
        .await
        .optional()?;
    if is_kept == Some(true) {
        return Ok(());
    }
    diesel::insert_into(frozen_tables::table)
        .values((
            frozen_tables::club_id.eq(club.0),
            frozen_tables::season_id.eq(season.0),
            frozen_tables::week_no.eq(number(frozen.week)),
            frozen_tables::version.eq(frozen.version),
            frozen_tables::act.eq(&frozen.act),
            frozen_tables::contents.eq(&contents),
            frozen_tables::frozen_at.eq(frozen.frozen_at),
            frozen_tables::whole.eq(frozen.whole),
        ))
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
pub async fn list(conn: &mut Conn, club: ClubId, season: SeasonId) -> Result<Vec<Frozen>, Fault> {
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
        .load(conn)
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
