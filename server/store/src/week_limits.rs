//! The limits of a week: the cap, the catalogue version and the instants that lists, claims and
//! availabilities are checked against.

use chrono::Duration;
use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::keys::WeekKey;
use league::points::Points;
use league::season::WeekFacts;
use league::time::Instant;
use league::week::WeekNo;

use crate::keys::week_pk;
use crate::number::convert;
use crate::schema::weeks;
use crate::week_no::week_from_sql;
use crate::{Conn, StoreError};

/// Cap, catalogue version and instants of a week.
#[derive(Clone, Copy, Debug)]
pub struct WeekLimits {
    pub week: WeekNo,
    pub cap: Points,
    /// Version of the catalogue that the week is pinned to.
    pub catalogue_number: i32,
    /// The instants, planned and happened.
    pub facts: WeekFacts,
}

#[derive(Queryable, Selectable)]
#[diesel(table_name = weeks)]
pub(crate) struct WeekLimitsColumns {
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

impl TryFrom<WeekLimitsColumns> for WeekLimits {
    type Error = StoreError;

    fn try_from(row: WeekLimitsColumns) -> Result<Self, StoreError> {
        Ok(Self {
            week: week_from_sql(row.week_no)?,
            cap: Points::new(convert("a cap", row.cap)?),
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
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find(mut conn: &Conn, week: WeekKey) -> Result<WeekLimits, StoreError> {
    let row: WeekLimitsColumns = weeks::table
        .find(week_pk(week))
        .select(WeekLimitsColumns::as_select())
        .first(&mut conn)
        .await?;
    row.try_into()
}

/// The limits of a week under a shared lock: the week can neither be opened nor closed before the
/// transaction ends, while many lists are sealed side by side.
///
/// The lock of a foreign key is too weak: it does not stop the update that opens the lists.
///
/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn lock_shared(mut conn: &Conn, week: WeekKey) -> Result<WeekLimits, StoreError> {
    let row: WeekLimitsColumns = weeks::table
        .find(week_pk(week))
        .select(WeekLimitsColumns::as_select())
        .for_share()
        .first(&mut conn)
        .await?;
    row.try_into()
}
