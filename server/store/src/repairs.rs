//! The games of a published round while it is repaired: locked, moved, deleted.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use league::ids::GameId;
use league::keys::{GameKey, SeasonKey, WeekKey};
use uuid::Uuid;

use crate::games::{self, GameRow};
use crate::keys::{game_pk, of_season, of_week};
use crate::number::convert;
use crate::schema::{games as table, slips};
use crate::{Conn, StoreError};

/// The games and byes of one of a week's rounds; no report comes in before the transaction ends.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn lock_games(
    conn: &mut Conn,
    week: WeekKey,
    round_no: u8,
) -> Result<Vec<GameRow>, StoreError> {
    let _: Vec<Uuid> = table::table
        .filter(of_week!(table, week))
        .filter(table::round_no.eq(i16::from(round_no)))
        .order(table::game_id)
        .select(table::game_id)
        .for_update()
        .load(conn)
        .await?;
    let mut games = games::list(conn, week.season, Some(week.week)).await?;
    games.retain(|game| game.round_no == round_no);
    Ok(games)
}

/// Puts a game to another night and table.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn move_game(
    conn: &mut Conn,
    game: GameKey,
    night: &str,
    table_no: u16,
) -> Result<(), StoreError> {
    diesel::update(table::table.find(game_pk(game)))
        .set((
            table::night.eq(night),
            table::table_no.eq(convert::<_, i16>("a table", table_no)?),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// Takes out games that will not be played. The version of the round that had them keeps them.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn delete_games(
    conn: &mut Conn,
    season: SeasonKey,
    ids: &[GameId],
) -> Result<(), StoreError> {
    let ids: Vec<Uuid> = ids.iter().map(|id| id.0).collect();
    let of_season = of_season!(slips, season);
    diesel::delete(slips::table.filter(of_season.and(slips::game_id.eq_any(&ids))))
        .execute(conn)
        .await?;
    let of_season = of_season!(table, season);
    diesel::delete(table::table.filter(of_season.and(table::game_id.eq_any(&ids))))
        .execute(conn)
        .await?;
    Ok(())
}
