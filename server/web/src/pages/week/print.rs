//! Page: a week on one sheet of paper: pairings, scenario, and a QR code that opens the week.

use actix_web::web::{Data, Path};
use actix_web::{HttpRequest, get};
use app::App;
use askama::Template;

use super::panel::{ScenarioPanel, WeekPanel, load_scenario};
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::pages::pictures::qr_code::QrCode;
use crate::pages::results::game::games_of_week;
use crate::pages::rounds::pairings::PairingRow;
use crate::pages::season::context::{SeasonContext, SeasonHeader, SeasonTab};
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
    app: Data<App>,
    request: PageRequest,
    path: Path<WeekPath>,
    http_request: HttpRequest,
) -> PageResult {
    let key = path.key()?;
    let context = SeasonContext::load(&app, &request, key.season).await?;
    let week = context.week(key.week)?;
    let server = PublicUrl::from_request(&http_request);
    let page = PrintPage {
        layout: request.layout(),
        t: request.t,
        header: context.header(&request, SeasonTab::Week),
        week: WeekPanel::new(&context, week, request.t),
        scenario: load_scenario(&app, &request, &context, &week.0).await?,
        games: games_of_week(&app, &request, &context, key.week).await?,
        code: QrCode::new(format!("{server}{}", context.week_link(key.week)))?,
    };
    render_page(&page)
}
