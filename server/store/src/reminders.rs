//! Reminders that were sent to everybody who owes a list or a result in a week.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::AccountId;
use league::keys::WeekKey;
use league::time::Instant;

use crate::keys::{of_week, week_columns};
use crate::schema::nudges;
use crate::{Conn, StoreError};

/// # Errors
/// A [`StoreError`] of the database.
pub async fn create(
    conn: &mut Conn,
    week: WeekKey,
    about: &str,
    by: AccountId,
    now: Instant,
) -> Result<(), StoreError> {
    diesel::insert_into(nudges::table)
        .values((
            week_columns!(nudges, week),
            nudges::about.eq(about),
            nudges::nudged_by.eq(by.0),
            nudges::nudged_at.eq(now),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// When people were last reminded of this, if ever.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn find_last(
    conn: &mut Conn,
    week: WeekKey,
    about: &str,
) -> Result<Option<Instant>, StoreError> {
    let last = nudges::table
        .filter(of_week!(nudges, week).and(nudges::about.eq(about)))
        .select(diesel::dsl::max(nudges::nudged_at))
        .first(conn)
        .await?;
    Ok(last)
}
