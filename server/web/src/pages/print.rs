//! The sheet of a week to print: pairings and scenario on one page, then a card for each table with
//! a code that opens its result slip.

use actix_web::web::{Data, Path};
use actix_web::{HttpRequest, get};
use app::{Desk, Refusal};
use askama::Template;
use qrcode::QrCode;
use qrcode::types::Color;

use super::address::InWeek;
use super::answer::{PageAnswer, framed, show};
use super::games::of_week;
use super::pairings::PairingRow;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::Texts;
use super::visit::{Frame, Visit};
use super::week_panel::{ScenarioPanel, WeekPanel, scenario};

#[derive(Template)]
#[template(path = "print.html")]
struct PrintPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    week: WeekPanel,
    scenario: ScenarioPanel,
    games: Vec<PairingRow>,
    cards: Vec<TableCard>,
}
framed!(PrintPage);

struct TableCard {
    night: String,
    table: u16,
    names: String,
    address: String,
    code: Code,
}

/// A QR code (ISO/IEC 18004) as one path of squares.
struct Code {
    size: usize,
    path: String,
}

/// Modules of quiet zone around a code (ISO/IEC 18004 asks for four; from memory).
const QUIET: usize = 4;

/// The sheet of a week.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/print")]
pub async fn show_print(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InWeek>,
    request: HttpRequest,
) -> PageAnswer {
    let (club, season, number) = path.ids()?;
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let week = scene.week(number)?;
    let games = of_week(&desk, &visit, &scene, number).await?;
    let server = {
        let connection = request.connection_info();
        format!("{}://{}", connection.scheme(), connection.host())
    };
    let page = PrintPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(&visit, Tab::Week),
        week: WeekPanel::new(&scene, week, visit.t),
        scenario: scenario(&desk, &visit, &scene, &week.0).await?,
        cards: cards(&games, &server)?,
        games,
    };
    show(&page)
}

fn cards(games: &[PairingRow], server: &str) -> Result<Vec<TableCard>, Refusal> {
    let mut cards = Vec::new();
    for game in games {
        let (Some(link), Some(second)) = (&game.link, &game.second) else {
            continue;
        };
        let address = format!("{server}{link}");
        cards.push(TableCard {
            night: game.night.clone(),
            table: game.table,
            names: format!("{} – {second}", game.first),
            code: code(&address)?,
            address,
        });
    }
    Ok(cards)
}

fn code(text: &str) -> Result<Code, Refusal> {
    let code = QrCode::new(text).map_err(|fault| Refusal::Broken(fault.to_string()))?;
    let width = code.width();
    let dark = code.to_colors().into_iter().enumerate();
    let squares = dark
        .filter(|(_, color)| *color == Color::Dark)
        .map(|(at, _)| {
            let (x, y) = (at % width + QUIET, at / width + QUIET);
            format!("M{x} {y}h1v1h-1z")
        });
    Ok(Code {
        size: width + 2 * QUIET,
        path: squares.collect(),
    })
}
