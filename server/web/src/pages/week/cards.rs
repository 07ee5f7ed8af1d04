//! Page: a card for each table of a week, to be cut apart: who plays there, and a QR code that opens the game's
//! result slip.

use actix_web::web::Path;
use actix_web::{HttpRequest, get};
use app::Refusal;
use askama::Template;

use super::panel::WeekPanel;
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
#[template(path = "cards.html")]
struct CardsPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    week: WeekPanel,
    cards: Vec<TableCard>,
}
page_template!(CardsPage);

struct TableCard {
    night: String,
    table: u16,
    first: String,
    second: String,
    code: QrCode,
}

/// The cards of a week.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}/cards")]
pub async fn show_cards(
    page: SeasonPage,
    path: Path<WeekPath>,
    http_request: HttpRequest,
) -> PageResult {
    let key = path.key()?;
    let week = page.context.week(key.week)?;
    let games = games_of_week(&page, key.week).await?;
    let server = PublicUrl::from_request(&http_request);
    let cards: Result<Vec<_>, Refusal> = games
        .into_iter()
        .filter_map(|game| card(game, &server))
        .collect();
    render_page(&CardsPage {
        layout: page.layout(),
        t: page.t(),
        header: page.header(SeasonTab::Week),
        week: WeekPanel::new(&page.context, week, page.t()),
        cards: cards?,
    })
}

/// A bye has no table, and so no card.
fn card(game: PairingRow, server: &str) -> Option<Result<TableCard, Refusal>> {
    let (link, second) = (game.link?, game.second?);
    let code = QrCode::new(format!("{server}{link}"));
    Some(code.map(|code| TableCard {
        night: game.night,
        table: game.table,
        first: game.first,
        second,
        code,
    }))
}
