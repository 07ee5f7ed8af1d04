//! A table's rows with the names of their players.

use document::table::standings::{NamedRowDocument, RowDocument};
use league::standings::Standings;
use store::players::Player;

/// The rows of a table in its order, each with the name and faction that the player has now.
#[must_use]
pub fn named_rows(standings: &Standings, players: &[Player]) -> Vec<NamedRowDocument> {
    let named = |row| {
        let row = RowDocument::from(row);
        let player = players.iter().find(|player| player.id.0 == row.player);
        // Every row is of a player: the table is made from these very players.
        let (handle, faction) = player
            .map(|player| (player.handle.clone(), player.faction.clone()))
            .unwrap_or_default();
        NamedRowDocument {
            handle,
            faction,
            row,
        }
    };
    standings.rows.iter().map(named).collect()
}
