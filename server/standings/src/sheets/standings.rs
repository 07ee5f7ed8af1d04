//! The table.

use app::Refusal;
use app::standings::{Board, FrozenTable, named_rows};
use document::sheet::Sheet;
use document::standings::{NamedRowDocument, RowDocument};
use league::standings::table;
use league::week::WeekNo;
use serde::Serialize;

use super::{PublicStandings, as_of};

/// The table as of a week.
#[derive(Clone, Serialize)]
#[serde(into = "PublicStandings")]
pub struct Standings {
    /// The season's version that it belongs to.
    pub version: i64,
    /// The season's name.
    pub season: String,
    /// Last week that counts.
    pub as_of: u8,
    /// In the order of the table.
    pub rows: Vec<NamedRowDocument>,
}

/// # Errors
/// [`Refusal::NotFound`] for a week that the season does not have.
pub fn standings(board: &Board, week: Option<WeekNo>) -> Result<Standings, Refusal> {
    let found = table(&board.facts, as_of(board, week)?);
    Ok(Standings {
        version: board.season.version,
        season: board.season.name.clone(),
        as_of: found.as_of.number(),
        rows: named_rows(&found, &board.players),
    })
}

/// The table as it stood at a version of its season.
pub fn frozen_standings(frozen: FrozenTable) -> Standings {
    Standings {
        version: frozen.version,
        season: frozen.season,
        as_of: frozen.table.as_of,
        rows: frozen.table.rows,
    }
}

impl Sheet for Standings {
    fn head(&self) -> Vec<String> {
        RowDocument::columns(self.as_of)
    }

    fn rows(&self) -> Vec<Vec<String>> {
        let cells =
            |named: &NamedRowDocument| named.row.cells(&named.handle, &named.faction, self.as_of);
        self.rows.iter().map(cells).collect()
    }
}
