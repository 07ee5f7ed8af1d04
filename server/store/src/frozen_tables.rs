//! Tables of closed weeks, kept as they were.

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
}

/// Keeps a table.
///
/// # Errors
/// A [`Fault`] of the database.
pub async fn create(
    conn: &mut Conn,
    club: ClubId,
    season: SeasonId,
    frozen: &Frozen,
    table: &FrozenTableDocument,
) -> Result<(), Fault> {
    diesel::insert_into(frozen_tables::table)
        .values((
            frozen_tables::club_id.eq(club.0),
            frozen_tables::season_id.eq(season.0),
            frozen_tables::week_no.eq(number(frozen.week)),
            frozen_tables::version.eq(frozen.version),
            frozen_tables::act.eq(&frozen.act),
            frozen_tables::contents.eq(Json(table.clone())),
            frozen_tables::frozen_at.eq(frozen.frozen_at),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// The table of a week as it stood at a version of its season, and from which version on it was so.
///
/// # Errors
/// [`Fault::NotFound`] where the week was not closed yet at that version.
pub async fn find(
    conn: &mut Conn,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    version: i64,
) -> Result<(i64, FrozenTableDocument), Fault> {
    let (version, table): (i64, Json<FrozenTableDocument>) = frozen_tables::table
        .filter(frozen_tables::club_id.eq(club.0))
        .filter(frozen_tables::season_id.eq(season.0))
        .filter(frozen_tables::week_no.eq(number(week)))
        .filter(frozen_tables::version.le(version))
        .order(frozen_tables::version.desc())
        .select((frozen_tables::version, frozen_tables::contents))
        .first(conn)
        .await?;
    Ok((version, table.0))
}

/// All that were frozen, week by week, the oldest of each first.
///
/// # Errors
/// A [`Fault`] of the database.
pub async fn list(conn: &mut Conn, club: ClubId, season: SeasonId) -> Result<Vec<Frozen>, Fault> {
    let rows: Vec<(i16, i64, String, Instant)> = frozen_tables::table
        .filter(frozen_tables::club_id.eq(club.0))
        .filter(frozen_tables::season_id.eq(season.0))
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
        })
    };
    rows.into_iter().map(frozen).collect()
}
