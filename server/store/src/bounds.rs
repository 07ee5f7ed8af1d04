//! What a week binds lists, claims and answers to.

use chrono::Duration;
use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::{ClubId, SeasonId};
use league::points::Points;
use league::season::WeekFacts;
use league::time::Instant;
use league::week::WeekNo;

use crate::schema::weeks;
use crate::weeks::{number, week_no};
use crate::{Conn, Fault};

/// Cap, version of the catalogue and instants of a week.
#[derive(Clone, Copy, Debug)]
pub struct Bounds {
    /// Its number.
    pub week: WeekNo,
    /// The points cap.
    pub cap: Points,
    /// Version of the catalogue that the week is pinned to.
    pub catalogue_number: i32,
    /// The instants, planned and happened.
    pub facts: WeekFacts,
}

#[derive(Queryable, Selectable)]
#[diesel(table_name = weeks)]
pub(crate) struct BoundsRow {
    pub week_no: i16,
    cap: i32,
    catalogue_number: i32,
    announce_at: Instant,
    lists_due_at: Instant,
    play_until_at: Instant,
    grace_minutes: i32,
    lists_opened_at: Option<Instant>,
    paired_at: Option<Instant>,
    closed_at: Option<Instant>,
}

impl TryFrom<BoundsRow> for Bounds {
    type Error = Fault;

    fn try_from(row: BoundsRow) -> Result<Self, Fault> {
        Ok(Self {
            week: week_no(row.week_no)?,
            cap: Points::new(u32::try_from(row.cap).unwrap_or_default()),
            catalogue_number: row.catalogue_number,
            facts: WeekFacts {
                announce_at: row.announce_at,
                lists_due_at: row.lists_due_at,
                grace: Duration::minutes(row.grace_minutes.into()),
                play_until_at: row.play_until_at,
                lists_opened_at: row.lists_opened_at,
                paired_at: row.paired_at,
                closed_at: row.closed_at,
            },
        })
    }
}

/// # Errors
/// [`Fault::NotFound`], or a fault of the database.
pub async fn find(
    mut conn: &Conn,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<Bounds, Fault> {
    let row: BoundsRow = weeks::table
        .find((club.0, season.0, number(week)))
        .select(BoundsRow::as_select())
        .first(&mut conn)
        .await?;
    row.try_into()
}

/// What the week binds to, the week locked so that it can neither be opened nor closed before the
/// transaction ends, while others may hold the same lock: many lists come in side by side.
///
/// A foreign key alone would not do: its lock does not stop the update that opens the lists.
///
/// # Errors
/// [`Fault::NotFound`], or a fault of the database.
pub async fn hold(
    mut conn: &Conn,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
) -> Result<Bounds, Fault> {
    let row: BoundsRow = weeks::table
        .find((club.0, season.0, number(week)))
        .select(BoundsRow::as_select())
        .for_share()
        .first(&mut conn)
        .await?;
    row.try_into()
}
