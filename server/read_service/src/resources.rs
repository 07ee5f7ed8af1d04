//! The resources of a season: each rendered from one snapshot (the board), as JSON and CSV, some as HTML or SVG.

mod badge;
mod games;
mod ledger;
mod lookup;
mod record;
mod seasons;
mod standings;
mod standings_document;
mod standings_html;
mod statistics;
mod tables;
mod weeks;

use app::Refusal;
use app::standings::Board;
use document::csv::table::{CsvTable, write_csv};
use league::ids::PlayerId;
use league::week::WeekNo;
use serde::Serialize;

use crate::http::format::Format;
use badge::render_badge;
use games::{pairings, results};
use ledger::ledger;
use record::player_place;
use standings::standings_table;
use statistics::statistics;
use tables::tables;
use weeks::weeks;

pub use games::{PublicPairings, PublicResults};
pub use ledger::{PublicLedger, frozen_ledger};
pub use record::{PublicPlace, PublicRecord};
pub use seasons::PublicSeasons;
pub use standings::frozen_standings;
pub use standings_document::PublicStandings;
pub use standings_html::standings_html;
pub use statistics::PublicStatistics;
pub use tables::PublicTables;
pub use weeks::PublicWeeks;

/// What can be read of a season.
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

/// What a page is cached by: a resource in a format.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct PageKey {
    pub resource: Resource,
    pub format: Format,
}

impl Resource {
    /// The body, rendered from a snapshot of the season.
    ///
    /// # Errors
    /// [`Refusal::NotFound`] for a week or player that the season does not have, and for a format
    /// that the resource does not have.
    pub fn render(self, board: &Board, format: Format) -> Result<Vec<u8>, Refusal> {
        match (self, format) {
            (Self::Standings(week), Format::Html(language)) => {
                standings_html(standings_table(board, week)?, language)
            }
            (Self::Standings(week), _) => render_rows(&standings_table(board, week)?, format),
            (Self::Pairings(week), _) => render_rows(&pairings(board, week)?, format),
            (Self::Results(week), _) => render_rows(&results(board, week)?, format),
            (Self::Weeks, _) => render_rows(&weeks(board), format),
            (Self::Statistics(week), _) => render_rows(&statistics(board, week)?, format),
            (Self::Tables, _) => render_rows(&tables(board), format),
            (Self::Ledger(player, week), _) => render_rows(&ledger(board, player, week)?, format),
            (Self::Place(player), _) => render_rows(&player_place(board, player)?, format),
            (Self::Badge, Format::Svg(language)) => render_badge(board, language),
            (Self::Badge, _) => Err(Refusal::NotFound),
        }
    }
}

/// Rows as JSON or CSV.
///
/// # Errors
/// [`Refusal::NotFound`] for another format.
pub fn render_rows(rows: &(impl CsvTable + Serialize), format: Format) -> Result<Vec<u8>, Refusal> {
    match format {
        Format::Json => {
            serde_json::to_vec(rows).map_err(|cause| Refusal::Internal(cause.to_string()))
        }
        Format::Csv => write_csv(rows)
            .map_err(|cause| Refusal::Internal(format!("a resource as CSV: {cause}"))),
        Format::Html(_) | Format::Svg(_) => Err(Refusal::NotFound),
    }
}
