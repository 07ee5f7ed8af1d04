//! Point adjustments by referees.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::{AccountId, ClubId, PlayerId, RulingId, SeasonId};
use league::name::Text;
use league::points::LeaguePoints;
use league::standings::Adjustment;
use league::time::Instant;
use uuid::Uuid;

use crate::of_season::of_season;
use crate::schema::adjustments;
use crate::week_no::{week_from_sql, week_to_sql};
use crate::{Conn, StoreError};

/// # Errors
/// A [`StoreError`] of the database.
pub async fn create(
    conn: &mut Conn,
    club: ClubId,
    season: SeasonId,
    adjustment: &Adjustment,
    by: AccountId,
    now: Instant,
) -> Result<(), StoreError> {
    diesel::insert_into(adjustments::table)
        .values((
            adjustments::club_id.eq(club.0),
            adjustments::season_id.eq(season.0),
            adjustments::ruling_id.eq(adjustment.ruling.0),
            adjustments::player_id.eq(adjustment.player.0),
            adjustments::week_no.eq(week_to_sql(adjustment.week)),
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
pub async fn list(
    mut conn: &Conn,
    club: ClubId,
    season: SeasonId,
) -> Result<Vec<Adjustment>, StoreError> {
    let rows: Vec<(Uuid, Uuid, i16, i32, String)> = adjustments::table
        .filter(of_season!(adjustments, club, season))
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
