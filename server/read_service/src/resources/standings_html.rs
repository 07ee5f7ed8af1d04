//! The standings as HTML for other sites to frame: `<iframe src=".../standings.html"></iframe>`.

use app::Refusal;
use askama::Template;
use messages::{Language, Texts};

use super::standings::StandingsTable;

#[derive(Template)]
#[template(path = "standings.html")]
struct TablePage {
    t: Texts,
    language: &'static str,
    table: StandingsTable,
}

/// # Errors
/// [`Refusal::Internal`] when the template fails.
pub fn standings_html(table: StandingsTable, language: Language) -> Result<Vec<u8>, Refusal> {
    let page = TablePage {
        t: Texts::of(language),
        language: language.code(),
        table,
    };
    let page = page.render();
    page.map(String::into_bytes)
        .map_err(|cause| Refusal::Internal(cause.to_string()))
}
