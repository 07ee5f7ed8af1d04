//! The sheet of a week to print on one page: pairings, scenario, and a code that opens the week.

use actix_web::web::{Data, Path};
use actix_web::{HttpRequest, get};
use app::Desk;
use askama::Template;

use super::address::InWeek;
use super::answer::{PageAnswer, framed, show};
use super::games::of_week;
use super::pairings::PairingRow;
use super::qr::Code;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::Texts;
use super::visit::{Frame, Visit};
use super::week_panel::{ScenarioPanel, WeekPanel, scenario};
use crate::public_address::PublicAddress;

#[derive(Template)]
#[template(path = "print.html")]
struct PrintPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    week: WeekPanel,
    scenario: ScenarioPanel,
    games: Vec<PairingRow>,
    code: Code,
}
framed!(PrintPage);

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
    let server = PublicAddress::of(&request);
    let page = PrintPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(&visit, Tab::Week),
        week: WeekPanel::new(&scene, week, visit.t),
        scenario: scenario(&desk, &visit, &scene, &week.0).await?,
        games: of_week(&desk, &visit, &scene, number).await?,
        code: Code::new(format!("{server}{}", scene.week_link(number)))?,
    };
    show(&page)
}
