//! The wall of the hall: standings and this week's pairings, one part after the other, kept up to
//! date, with nobody's hand needed. Without a script all parts stand below each other.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::Desk;
use app::seasons::Week;
use askama::Template;
use league::season::Phase;

use super::address::InSeason;
use super::answer::{PageAnswer, framed, show};
use super::games::of_week;
use super::moment::Moment;
use super::pairings::PairingRow;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::standings::{StandingsRow, standings_rows};
use super::texts::Texts;
use super::visit::{Frame, Visit};
use super::week_panel::WeekPanel;
use crate::problem::Problem;

/// Rows that can be read from across the hall on a screen of 16 to 9.
const ROWS: usize = 9;

#[derive(Template)]
#[template(path = "wall.html")]
struct WallPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    week: Option<WeekPanel>,
    as_of: u8,
    slides: Vec<Slide>,
}
framed!(WallPage);

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
        night: Option<Moment>,
        rows: Vec<PairingRow>,
    },
}

/// The wall screen.
#[get("/clubs/{club}/seasons/{season}/wall")]
pub async fn show_wall(desk: Data<Desk>, visit: Visit, path: Path<InSeason>) -> PageAnswer {
    let (club, season) = path.ids();
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let found = app::standings::find_standings(&desk, visit.viewer, club, season, None).await?;
    let standings = found.standings;
    let mut slides = parts(
        standings_rows(&scene, visit.t, &standings.rows),
        Content::Standings,
    );
    slides.extend(pairing_slides(&desk, &visit, &scene).await?);
    let current = scene.current();
    let page = WallPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(&visit, Tab::Standings),
        week: current
            .last()
            .map(|week| WeekPanel::new(&scene, week, visit.t)),
        as_of: standings.as_of.number(),
        slides,
    };
    show(&page)
}

/// The games of the weeks that are being played, night by night; byes come at the end.
async fn pairing_slides(
    desk: &Desk,
    visit: &Visit,
    scene: &SeasonScene,
) -> Result<Vec<Slide>, Problem> {
    let mut slides = Vec::new();
    let played = |(_, phase): &&&(Week, Phase)| *phase == Phase::Paired;
    for week in scene.current().iter().filter(played) {
        let panel = WeekPanel::new(scene, week, visit.t);
        let mut games = of_week(desk, visit, scene, panel.week).await?;
        for night in panel.nights {
            let of_night = |game: &mut PairingRow| game.night == night.key;
            let rows: Vec<_> = games.extract_if(.., of_night).collect();
            slides.extend(parts(rows, |rows| Content::Pairings {
                week: panel.number,
                night: Some(night.begins.clone()),
                rows,
            }));
        }
        slides.extend(parts(games, |rows| Content::Pairings {
            week: panel.number,
            night: None,
            rows,
        }));
    }
    Ok(slides)
}

/// Rows in parts that fit the screen, none much shorter than the others.
fn parts<R>(rows: Vec<R>, content: impl Fn(Vec<R>) -> Content) -> Vec<Slide> {
    let of = rows.len().div_ceil(ROWS);
    let each = rows.len().div_ceil(of.max(1));
    let mut rows = rows.into_iter();
    let slides = (1..=of).map(|part| Slide {
        part,
        of,
        content: content(rows.by_ref().take(each).collect()),
    });
    slides.collect()
}
