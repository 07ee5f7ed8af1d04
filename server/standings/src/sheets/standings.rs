//! The table.

use app::Refusal;
use app::standings::Board;
use document::standings::{RowDocument, StandingsDocument};
use league::standings::table;
use league::week::WeekNo;
use serde::Serialize;

use super::csv::{Sheet, columns, or_empty, typed};
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
        let fixed = [
            "rank", "player", "faction", "active", "total", "movement", "won", "drawn", "lost",
            "unplayed",
        ];
        let mut head = columns(&fixed);
        head.extend((1..=self.as_of).map(|week| format!("week_{week}")));
        head
    }

    fn rows(&self) -> Vec<Vec<String>> {
        self.rows.iter().map(|row| self.cells(row)).collect()
    }
}

impl Standings {
    fn cells(&self, named: &NamedRow) -> Vec<String> {
        let row = &named.row;
        let mut cells = vec![
            row.rank.to_string(),
            typed(&named.handle),
            typed(&named.faction),
            row.active.to_string(),
            row.total.to_string(),
            or_empty(row.movement),
            row.record.won.to_string(),
            row.record.drawn.to_string(),
            row.record.lost.to_string(),
            row.record.unplayed.to_string(),
        ];
        cells.extend((1..=self.as_of).map(|week| {
            let of_week = row.weeks.iter().find(|it| it.week == week);
            or_empty(of_week.map(|it| it.points))
        }));
        cells
    }
}
