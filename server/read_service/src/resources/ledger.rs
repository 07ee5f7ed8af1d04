//! Resource: the ledger of a player, every line behind the total.

use app::Refusal;
use app::standings::{Board, FrozenTable};
use document::csv::table::CsvTable;
use document::table::ledger::LineDocument;
use league::ids::PlayerId;
use league::standings::table;
use league::week::WeekNo;
use serde::Serialize;
use utoipa::ToSchema;

use super::lookup::{player_name, resolve_week};

/// A player's ledger.
#[derive(Serialize, ToSchema)]
pub struct PublicLedger {
    version: i64,
    as_of: u8,
    handle: String,
    /// The sum of the lines.
    total: i32,
    /// Week by week.
    lines: Vec<LineDocument>,
}

/// # Errors
/// [`Refusal::NotFound`] for a week that the season does not have and a player without a row.
pub fn ledger(
    board: &Board,
    player: PlayerId,
    week: Option<WeekNo>,
) -> Result<PublicLedger, Refusal> {
    let week = resolve_week(board, week)?;
    let found = table(&board.facts, week);
    let row = found.rows.iter().find(|row| row.player == player);
    let total = row.ok_or(Refusal::NotFound)?.total.get();
    let lines = found.ledger.iter().filter(|line| line.player == player);
    Ok(PublicLedger {
        version: board.season.version,
        as_of: week.number(),
        handle: player_name(board, player.0).0.to_owned(),
        total,
        lines: lines.map(LineDocument::from).collect(),
    })
}

/// The lines behind a player's total as they stood at a version of the season.
///
/// # Errors
/// [`Refusal::NotFound`] for a player without a row.
pub fn frozen_ledger(frozen: FrozenTable, player: PlayerId) -> Result<PublicLedger, Refusal> {
    let FrozenTable { version, table, .. } = frozen;
    let named = table.rows.into_iter().find(|it| it.row.player == player.0);
    let named = named.ok_or(Refusal::NotFound)?;
    let lines = table.ledger.into_iter();
    Ok(PublicLedger {
        version,
        as_of: table.as_of,
        handle: named.handle,
        total: named.row.total,
        lines: lines.filter(|line| line.player == player.0).collect(),
    })
}

impl CsvTable for PublicLedger {
    fn header(&self) -> Vec<String> {
        LineDocument::columns()
    }

    fn rows(&self) -> Vec<Vec<String>> {
        self.lines.iter().map(LineDocument::cells).collect()
    }
}
