//! Units that players brought into a season from the one before it.

use diesel::prelude::*;
use diesel_async::RunQueryDsl;
use document::painting::brought::BroughtUnitDocument;
use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::painting::BroughtUnit;
use uuid::Uuid;

use crate::json::JsonColumn;
use crate::keys::{of_season_or_player, season_columns};
use crate::schema::brought_units;
use crate::{Conn, StoreError};

/// Saves the units that a new player brings.
///
/// # Errors
/// A [`StoreError`] of the database.
pub async fn create(
    conn: &mut Conn,
    season: SeasonKey,
    player: PlayerId,
    units: &[BroughtUnit],
) -> Result<(), StoreError> {
    let units: Vec<BroughtUnitDocument> = units.iter().map(BroughtUnitDocument::from).collect();
    diesel::insert_into(brought_units::table)
        .values((
            season_columns!(brought_units, season),
            brought_units::player_id.eq(player.0),
            brought_units::units.eq(JsonColumn(units)),
        ))
        .execute(conn)
        .await?;
    Ok(())
}

/// What everybody brought, or one player.
///
/// # Errors
/// [`StoreError::Internal`] for a unit that cannot be read, or an error of the database.
pub async fn list(
    mut conn: &Conn,
    season: SeasonKey,
    player: Option<PlayerId>,
) -> Result<Vec<BroughtUnit>, StoreError> {
    let rows: Vec<(Uuid, JsonColumn<Vec<BroughtUnitDocument>>)> =
        of_season_or_player!(brought_units, season, player)
            .order(brought_units::player_id)
            .select((brought_units::player_id, brought_units::units))
            .load(&mut conn)
            .await?;
    let units = rows.into_iter().flat_map(|(player, JsonColumn(units))| {
        units.into_iter().map(move |unit| {
            let entry = unit.entry.clone();
            unit.into_brought_unit(PlayerId(player)).ok_or_else(|| {
                StoreError::Internal(format!("unit {entry} of {player} cannot be read"))
            })
        })
    });
    units.collect()
}
