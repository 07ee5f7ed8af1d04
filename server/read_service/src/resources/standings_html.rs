//! The standings as HTML for other sites to frame: `<iframe src=".../standings.html"></iframe>`.

use app::Refusal;
use askama::Template;

use super::standings::StandingsTable;

#[derive(Template)]
#[template(path = "standings.html")]
struct TablePage {
    table: StandingsTable,
}

/// # Errors
/// [`Refusal::Internal`] when the template fails.
pub fn standings_html(table: StandingsTable) -> Result<Vec<u8>, Refusal> {
    let page = TablePage { table }.render();
    page.map(String::into_bytes)
        .map_err(|cause| Refusal::Internal(cause.to_string()))
}
