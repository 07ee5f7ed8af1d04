//! A table for the pages of others: `<iframe src=".../standings.html"></iframe>`.

use app::Refusal;
use askama::Template;

use super::standings::Standings;

#[derive(Template)]
#[template(path = "standings.html")]
struct TablePage {
    table: Standings,
}

/// # Errors
/// [`Refusal::Broken`] when it cannot be written.
pub fn embedded_table(table: Standings) -> Result<Vec<u8>, Refusal> {
    let page = TablePage { table }.render();
    page.map(String::into_bytes)
        .map_err(|cause| Refusal::Broken(cause.to_string()))
}
