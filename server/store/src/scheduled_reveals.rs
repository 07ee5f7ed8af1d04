//! Scheduled reveals: an announcement or a reveal changes what may be seen, though nobody acts. Which are
//! due, and up to when they have been published.

use diesel::prelude::*;
use diesel::sql_types::{Timestamptz, Uuid as SqlUuid};
use diesel_async::RunQueryDsl;
use league::keys::SeasonKey;
use league::time::Instant;
use uuid::Uuid;

use crate::keys::{season_from_pk, season_pk};
use crate::schema::seasons;
use crate::{Conn, StoreError};

#[derive(QueryableByName)]
struct SeasonColumns {
    #[diesel(sql_type = SqlUuid)]
    club_id: Uuid,
    #[diesel(sql_type = SqlUuid)]
    season_id: Uuid,
}

const DUE: &str = "
    select distinct seasons.club_id, seasons.season_id
    from seasons
    join weeks using (club_id, season_id)
    cross join lateral (values (announce_at), (title_reveal_at), (full_reveal_at)) moments (instant)
    where seasons.state = 'started'
    and instant <= $1 and instant > coalesce(moments_told_at, started_at)";

/// Running seasons with an announcement or reveal that is due by `now` and not published yet.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list_due(conn: &mut Conn, now: Instant) -> Result<Vec<SeasonKey>, StoreError> {
    let rows: Vec<SeasonColumns> = diesel::sql_query(DUE)
        .bind::<Timestamptz, _>(now)
        .load(conn)
        .await?;
    let key = |row: SeasonColumns| season_from_pk((row.club_id, row.season_id));
    Ok(rows.into_iter().map(key).collect())
}

/// Up to when the reveals of a season are published: its start, where none is.
///
/// # Errors
/// [`StoreError::NotFound`], or an error of the database.
pub async fn find_revealed_until(
    conn: &mut Conn,
    season: SeasonKey,
) -> Result<Option<Instant>, StoreError> {
    let (told, started): (Option<Instant>, Option<Instant>) = seasons::table
        .find(season_pk(season))
        .select((seasons::moments_told_at, seasons::started_at))
        .first(conn)
        .await?;
    Ok(told.or(started))
}

/// Marks all reveals of a season up to `now` as published.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn mark_revealed_until(
    conn: &mut Conn,
    season: SeasonKey,
    now: Instant,
) -> Result<(), StoreError> {
    diesel::update(seasons::table.find(season_pk(season)))
        .set(seasons::moments_told_at.eq(now))
        .execute(conn)
        .await?;
    Ok(())
}
