//! A table for the pages of others: `<iframe src=".../standings.html"></iframe>`.

use app::Refusal;
use app::standings::Board;
use askama::Template;
use league::week::WeekNo;

use super::standings::{Standings, standings};

#[derive(Template)]
#[template(path = "standings.html")]
struct TablePage {
    table: Standings,
}

/// # Errors
/// [`Refusal::NotFound`] for a week that the season does not have.
pub fn embedded_table(board: &Board, week: Option<WeekNo>) -> Result<Vec<u8>, Refusal> {
    let table = standings(board, week)?;
    let page = TablePage { table }.render();
    page.map(String::into_bytes)
        .map_err(|cause| Refusal::Broken(cause.to_string()))
}
