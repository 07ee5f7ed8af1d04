//! The badge: a small SVG picture of the week and who leads, for pages and signatures.

use app::Refusal;
use app::standings::Board;
use askama::Template;
use messages::{Language, Texts};

use super::standings::standings_table;

/// Pixels for a character of the badge's 11-pixel sans-serif, on the wide side.
const CHARACTER_WIDTH: usize = 7;

const MARGIN: usize = 16;

#[derive(Template)]
#[template(path = "badge.svg", escape = "html")]
struct Badge {
    week: String,
    week_width: usize,
    leaders: String,
    leaders_width: usize,
}

impl Badge {
    fn width(&self) -> usize {
        self.week_width + self.leaders_width
    }

    fn leaders_middle(&self) -> usize {
        self.week_width + self.leaders_width / 2
    }
}

/// # Errors
/// [`Refusal::Internal`] when the template fails.
pub fn render_badge(board: &Board, language: Language) -> Result<Vec<u8>, Refusal> {
    let t = Texts::of(language);
    let table = standings_table(board, None)?;
    let first = table.rows.iter().filter(|named| named.row.rank == 1);
    let leaders: Vec<&str> = first.map(|named| named.handle.as_str()).collect();
    let leaders = match leaders[..] {
        [] => t.badge_nobody().into_owned(),
        [leader] => leader.to_owned(),
        [_, ..] => t.badge_shared(leaders.len()),
    };
    let week = t.badge_week(table.as_of);
    let width = |text: &str| text.chars().count() * CHARACTER_WIDTH + MARGIN;
    let drawn = Badge {
        week_width: width(&week),
        week,
        leaders_width: width(&leaders),
        leaders,
    };
    let drawn = drawn.render();
    drawn
        .map(String::into_bytes)
        .map_err(|cause| Refusal::Internal(cause.to_string()))
}
