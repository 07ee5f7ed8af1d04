//! Reminders that were sent to everybody who owes a list or a result in a week.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::{AccountId, ClubId, SeasonId};
use league::time::Instant;
use league::week::WeekNo;

use crate::of_season::of_season;
use crate::schema::nudges;
use crate::week_no::week_to_sql;
use crate::{Conn, StoreError};

/// # Errors
/// A [`StoreError`] of the database.
pub async fn create(
    conn: &mut Conn,
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    about: &str,
    by: AccountId,
    now: Instant,
) -> Result<(), StoreError> {
    diesel::insert_into(nudges::table)
        .values((
            nudges::club_id.eq(club.0),
            nudges::season_id.eq(season.0),
            nudges::week_no.eq(week_to_sql(week)),
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
    club: ClubId,
    season: SeasonId,
    week: WeekNo,
    about: &str,
) -> Result<Option<Instant>, StoreError> {
    let last = nudges::table
        .filter(of_season!(nudges, club, season))
        .filter(
            nudges::week_no
                .eq(week_to_sql(week))
                .and(nudges::about.eq(about)),
        )
        .select(diesel::dsl::max(nudges::nudged_at))
        .first(conn)
        .await?;
    Ok(last)
}
