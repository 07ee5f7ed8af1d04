//! Resource: which tables of closed weeks were frozen, when and why.

use app::standings::{Board, FrozenTableMeta};
use chrono::{DateTime, Utc};
use serde::Serialize;
use utoipa::ToSchema;

use document::csv::table::{CsvTable, columns};

/// When and why tables of closed weeks were frozen.
#[derive(Serialize, ToSchema)]
pub struct PublicTables {
    /// The season's version that the list belongs to.
    version: i64,
    /// Week by week, the oldest of each first.
    tables: Vec<PublicFrozenTable>,
}

/// One table that was frozen.
#[derive(Serialize, ToSchema)]
struct PublicFrozenTable {
    week: u8,
    /// The season's version from which on the week's table was so.
    version: i64,
    /// The act that made it: the close of the week, or what changed its table later.
    act: String,
    frozen_at: DateTime<Utc>,
    /// Where it is read, from the address of the season on.
    address: String,
}

/// The tables that were frozen so far.
pub fn tables(board: &Board) -> PublicTables {
    PublicTables {
        version: board.season.version,
        tables: board.frozen.iter().map(frozen_at).collect(),
    }
}

fn frozen_at(frozen: &FrozenTableMeta) -> PublicFrozenTable {
    let (week, version) = (frozen.week.number(), frozen.version);
    PublicFrozenTable {
        week,
        version,
        act: frozen.act.clone(),
        frozen_at: frozen.frozen_at,
        address: format!("standings?week={week}&version={version}"),
    }
}

impl CsvTable for PublicTables {
    fn header(&self) -> Vec<String> {
        columns(&["week", "version", "act", "frozen_at", "address"])
    }

    fn rows(&self) -> Vec<Vec<String>> {
        let cells = |table: &PublicFrozenTable| {
            vec![
                table.week.to_string(),
                table.version.to_string(),
                table.act.clone(),
                table.frozen_at.to_rfc3339(),
                table.address.clone(),
            ]
        };
        self.tables.iter().map(cells).collect()
    }
}
