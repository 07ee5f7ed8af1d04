//! What can be read of a season, each written from a board.

use app::Refusal;
use app::standings::Board;
use document::sheet::{Sheet, csv};
use league::ids::PlayerId;
use league::week::WeekNo;
use serde::Serialize;

use crate::format::Format;
use crate::sheets;

/// What is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Resource {
    /// The table after a week, or after the last that was paired.
    Standings(Option<WeekNo>),
    /// Who meets whom, where.
    Pairings(Option<WeekNo>),
    /// What came of it, as far as it stands.
    Results(Option<WeekNo>),
    /// The weeks, their scenarios as far as they are revealed.
    Weeks,
    /// Games counted by what they have in common.
    Statistics(Option<WeekNo>),
    /// The tables that were frozen.
    Tables,
    /// Every line behind a player's total.
    Ledger(PlayerId, Option<WeekNo>),
    /// A player's place in the table.
    Place(PlayerId),
    /// A small picture of week and leader.
    Badge,
}

/// A resource in a format.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Wanted {
    /// What.
    pub resource: Resource,
    /// How it is written.
    pub format: Format,
}

impl Resource {
    /// Its body.
    ///
    /// # Errors
    /// [`Refusal::NotFound`] for a week or player that the season does not have, and for a format
    /// that the resource does not have.
    pub fn write(self, board: &Board, format: Format) -> Result<Vec<u8>, Refusal> {
        match (self, format) {
            (Self::Standings(week), Format::Html) => {
                sheets::embedded_table(sheets::standings(board, week)?)
            }
            (Self::Standings(week), _) => write(&sheets::standings(board, week)?, format),
            (Self::Pairings(week), _) => write(&sheets::pairings(board, week)?, format),
            (Self::Results(week), _) => write(&sheets::results(board, week)?, format),
            (Self::Weeks, _) => write(&sheets::weeks(board), format),
            (Self::Statistics(week), _) => write(&sheets::statistics(board, week)?, format),
            (Self::Tables, _) => write(&sheets::tables(board), format),
            (Self::Ledger(player, week), _) => write(&sheets::ledger(board, player, week)?, format),
            (Self::Place(player), _) => write(&sheets::place(board, player)?, format),
            (Self::Badge, Format::Svg) => sheets::badge(board),
            (Self::Badge, _) => Err(Refusal::NotFound),
        }
    }
}

/// A sheet as JSON or CSV.
///
/// # Errors
/// [`Refusal::NotFound`] for another format.
pub fn write(sheet: &(impl Sheet + Serialize), format: Format) -> Result<Vec<u8>, Refusal> {
    match format {
        Format::Json => {
            serde_json::to_vec(sheet).map_err(|cause| Refusal::Broken(cause.to_string()))
        }
        Format::Csv => {
            csv(sheet).map_err(|cause| Refusal::Broken(format!("a sheet as CSV: {cause}")))
        }
        Format::Html | Format::Svg => Err(Refusal::NotFound),
    }
}
