//! Page: the wall screen: standings and this week's pairings as slides that advance and refresh by themselves.
//! Without the script all slides stand below each other.

use actix_web::get;
use app::seasons::Week;
use askama::Template;
use league::season::WeekPhase;

use super::context::{SeasonHeader, SeasonTab};
use super::season_page::SeasonPage;
use super::standings::{StandingsRow, standings_rows};
use crate::pages::frame::page_request::Layout;
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::pages::results::game::games_of_week;
use crate::pages::rounds::pairings::PairingRow;
use crate::pages::week::panel::WeekPanel;
use crate::pages::words::local_time::LocalTime;
use crate::problem::Problem;
use messages::Texts;

/// Rows that can be read from across the hall on a screen of 16 to 9.
const ROWS_PER_SLIDE: usize = 9;

#[derive(Template)]
#[template(path = "wall.html")]
struct WallPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    week: Option<WeekPanel>,
    as_of: u8,
    slides: Vec<Slide>,
}
page_template!(WallPage);

struct Slide {
    part: usize,
    of: usize,
    content: Content,
}

enum Content {
    Standings(Vec<StandingsRow>),
    /// The tables of one night, or the byes of the week.
    Pairings {
        week: u8,
        night: Option<LocalTime>,
        rows: Vec<PairingRow>,
    },
}

#[get("/clubs/{club}/seasons/{season}/wall")]
pub async fn show_wall(page: SeasonPage) -> PageResult {
    let (context, t) = (&page.context, page.t());
    let found = app::standings::find_standings(&page.app, page.viewer(), page.key(), None).await?;
    let standings = found.standings;
    let mut slides = split_into_slides(
        standings_rows(context, t, &standings.rows),
        Content::Standings,
    );
    slides.extend(pairing_slides(&page).await?);
    let current = context.current_weeks();
    render_page(&WallPage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Standings),
        week: current.last().map(|week| WeekPanel::new(context, week, t)),
        as_of: standings.as_of.number(),
        slides,
    })
}

/// The games of the weeks that are being played, night by night; byes come at the end.
async fn pairing_slides(page: &SeasonPage) -> Result<Vec<Slide>, Problem> {
    let mut slides = Vec::new();
    let played = |(_, phase): &&&(Week, WeekPhase)| *phase == WeekPhase::Paired;
    for week in page.context.current_weeks().iter().filter(played) {
        let panel = WeekPanel::new(&page.context, week, page.t());
        let mut games = games_of_week(page, panel.week).await?;
        for night in panel.nights {
            let of_night = |game: &mut PairingRow| game.night == night.key;
            let rows: Vec<_> = games.extract_if(.., of_night).collect();
            slides.extend(split_into_slides(rows, |rows| Content::Pairings {
                week: panel.number,
                night: Some(night.begins.clone()),
                rows,
            }));
        }
        slides.extend(split_into_slides(games, |rows| Content::Pairings {
            week: panel.number,
            night: None,
            rows,
        }));
    }
    Ok(slides)
}

/// Rows in parts that fit the screen, none much shorter than the others.
fn split_into_slides<R>(rows: Vec<R>, content: impl Fn(Vec<R>) -> Content) -> Vec<Slide> {
    let of = rows.len().div_ceil(ROWS_PER_SLIDE);
    let each = rows.len().div_ceil(of.max(1));
    let mut rows = rows.into_iter();
    let slides = (1..=of).map(|part| Slide {
        part,
        of,
        content: content(rows.by_ref().take(each).collect()),
    });
    slides.collect()
}
