//! Page: a week on one sheet of paper: pairings, scenario, and a QR code that opens the week.

use actix_web::web::Path;
use actix_web::{HttpRequest, get};
use askama::Template;

use super::panel::{ScenarioPanel, WeekPanel, load_scenario};
use crate::pages::frame::page_request::Layout;
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::pages::pictures::qr_code::QrCode;
use crate::pages::results::game::games_of_week;
use crate::pages::rounds::pairings::PairingRow;
use crate::pages::season::context::{SeasonHeader, SeasonTab};
use crate::pages::season::season_page::SeasonPage;
use crate::paths::WeekPath;
use crate::public_url::PublicUrl;
use messages::Texts;

#[derive(Template)]
#[template(path = "print.html")]
struct PrintPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    week: WeekPanel,
    scenario: ScenarioPanel,
    games: Vec<PairingRow>,
    code: QrCode,
}
page_template!(PrintPage);

/// The sheet of a week.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/print")]
pub async fn show_print(
    page: SeasonPage,
    path: Path<WeekPath>,
    http_request: HttpRequest,
) -> PageResult {
    let key = path.key()?;
    let context = &page.context;
    let week = context.week(key.week)?;
    let server = PublicUrl::from_request(&http_request);
    render_page(&PrintPage {
        layout: page.layout(),
        t: page.t(),
        header: page.header(SeasonTab::Week),
        week: WeekPanel::new(context, week, page.t()),
        scenario: load_scenario(&page, &week.0).await?,
        games: games_of_week(&page, key.week).await?,
        code: QrCode::new(format!("{server}{}", context.week_link(key.week)))?,
    })
}
