//! A card for each table of a week, to be cut apart: who plays there, and a code that opens the
//! game's result slip.

use actix_web::web::{Data, Path};
use actix_web::{HttpRequest, get};
use app::{Desk, Refusal};
use askama::Template;

use super::address::InWeek;
use super::answer::{PageAnswer, framed, show};
use super::games::of_week;
use super::pairings::PairingRow;
use super::qr::Code;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::Texts;
use super::visit::{Frame, Visit};
use super::week_panel::WeekPanel;
use crate::public_address::PublicAddress;

#[derive(Template)]
#[template(path = "cards.html")]
struct CardsPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    week: WeekPanel,
    cards: Vec<TableCard>,
}
framed!(CardsPage);

struct TableCard {
    night: String,
    table: u16,
    first: String,
    second: String,
    code: Code,
}

/// The cards of a week.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/cards")]
pub async fn show_cards(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InWeek>,
    request: HttpRequest,
) -> PageAnswer {
    let (club, season, number) = path.ids()?;
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let week = scene.week(number)?;
    let games = of_week(&desk, &visit, &scene, number).await?;
    let server = PublicAddress::of(&request);
    let cards: Result<Vec<_>, Refusal> = games
        .into_iter()
        .filter_map(|game| card(game, &server))
        .collect();
    let page = CardsPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(&visit, Tab::Week),
        week: WeekPanel::new(&scene, week, visit.t),
        cards: cards?,
    };
    show(&page)
}

/// A bye has no table, and so no card.
fn card(game: PairingRow, server: &str) -> Option<Result<TableCard, Refusal>> {
    let (link, second) = (game.link?, game.second?);
    let code = Code::new(format!("{server}{link}"));
    Some(code.map(|code| TableCard {
        night: game.night,
        table: game.table,
        first: game.first,
        second,
        code,
    }))
}
