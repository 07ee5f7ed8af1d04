//! The standings as of a week, from which JSON, CSV, HTML and the badge are rendered.

use app::Refusal;
use app::standings::{Board, FrozenTable, named_rows};
use document::csv::table::CsvTable;
use document::table::standings::{NamedRowDocument, RowDocument};
use league::standings::table;
use league::week::WeekNo;
use serde::Serialize;

use super::PublicStandings;
use super::lookup::resolve_week;

/// The table as of a week.
#[derive(Clone, Serialize)]
#[serde(into = "PublicStandings")]
pub struct StandingsTable {
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
pub fn standings_table(board: &Board, week: Option<WeekNo>) -> Result<StandingsTable, Refusal> {
    let found = table(&board.facts, resolve_week(board, week)?);
    Ok(StandingsTable {
        version: board.season.version,
        season: board.season.name.clone(),
        as_of: found.as_of.number(),
        rows: named_rows(&found, &board.players),
    })
}

/// The table as it stood at a version of its season.
pub fn frozen_standings(frozen: FrozenTable) -> StandingsTable {
    StandingsTable {
        version: frozen.version,
        season: frozen.season,
        as_of: frozen.table.as_of,
        rows: frozen.table.rows,
    }
}

impl CsvTable for StandingsTable {
    fn header(&self) -> Vec<String> {
        RowDocument::columns(self.as_of)
    }

    fn rows(&self) -> Vec<Vec<String>> {
        let cells =
            |named: &NamedRowDocument| named.row.cells(&named.handle, &named.faction, self.as_of);
        self.rows.iter().map(cells).collect()
    }
}
