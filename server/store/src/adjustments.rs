//! Point adjustments by referees.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::{AccountId, PlayerId, RulingId};
use league::keys::SeasonKey;
use league::name::Text;
use league::points::LeaguePoints;
use league::standings::Adjustment;
use league::time::Instant;
use uuid::Uuid;

use crate::keys::{of_season, week_columns};
use crate::schema::adjustments;
use crate::week_no::week_from_sql;
use crate::{Conn, StoreError};

/// # Errors
/// A [`StoreError`] of the database.
pub async fn create(
    conn: &mut Conn,
    season: SeasonKey,
    adjustment: &Adjustment,
    by: AccountId,
    now: Instant,
) -> Result<(), StoreError> {
    diesel::insert_into(adjustments::table)
        .values((
            week_columns!(adjustments, season.week(adjustment.week)),
            adjustments::ruling_id.eq(adjustment.ruling.0),
            adjustments::player_id.eq(adjustment.player.0),
            adjustments::amount.eq(adjustment.amount.get()),
            adjustments::reason.eq(adjustment.reason.as_str()),
            adjustments::made_by.eq(by.0),
            adjustments::made_at.eq(now),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// In the order in which they were made.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn list(mut conn: &Conn, season: SeasonKey) -> Result<Vec<Adjustment>, StoreError> {
    let rows: Vec<(Uuid, Uuid, i16, i32, String)> = adjustments::table
        .filter(of_season!(adjustments, season))
        .order((adjustments::made_at, adjustments::ruling_id))
        .select((
            adjustments::ruling_id,
            adjustments::player_id,
            adjustments::week_no,
            adjustments::amount,
            adjustments::reason,
        ))
        .load(&mut conn)
        .await?;
    rows.into_iter()
        .map(|(ruling, player, week, amount, reason)| {
            Ok(Adjustment {
                ruling: RulingId(ruling),
                player: PlayerId(player),
                week: week_from_sql(week)?,
                amount: LeaguePoints::new(amount),
                reason: Text::new(&reason)
                    .map_err(|fault| StoreError::Internal(fault.message().to_string()))?,
                version: 1,
            })
        })
        .collect()
}
