//! The table.

use app::Refusal;
use app::standings::Board;
use document::sheet::Sheet;
use document::standings::{RowDocument, StandingsDocument};
use league::standings::table;
use league::week::WeekNo;
use serde::Serialize;

use super::{as_of, named};

/// The table as of a week.
#[derive(Serialize)]
pub struct Standings {
    /// The season's version that it belongs to.
    pub version: i64,
    /// The season's name.
    pub season: String,
    /// Last week that counts.
    pub as_of: u8,
    /// In the order of the table.
    pub rows: Vec<NamedRow>,
}

/// A row with the player's name.
#[derive(Serialize)]
pub struct NamedRow {
    /// Name in this season.
    pub handle: String,
    /// Key of the faction.
    pub faction: String,
    /// The row.
    #[serde(flatten)]
    pub row: RowDocument,
}

/// # Errors
/// [`Refusal::NotFound`] for a week that the season does not have.
pub fn standings(board: &Board, week: Option<WeekNo>) -> Result<Standings, Refusal> {
    let found = StandingsDocument::from(&table(&board.facts, as_of(board, week)?));
    let rows = found.rows.into_iter().map(|row| {
        let (handle, faction) = named(board, row.player);
        NamedRow {
            handle: handle.to_owned(),
            faction: faction.to_owned(),
            row,
        }
    });
    Ok(Standings {
        version: board.season.version,
        season: board.season.name.clone(),
        as_of: found.as_of,
        rows: rows.collect(),
    })
}

impl Sheet for Standings {
    fn head(&self) -> Vec<String> {
        RowDocument::columns(self.as_of)
    }

    fn rows(&self) -> Vec<Vec<String>> {
        let cells = |named: &NamedRow| named.row.cells(&named.handle, &named.faction, self.as_of);
        self.rows.iter().map(cells).collect()
    }
}
