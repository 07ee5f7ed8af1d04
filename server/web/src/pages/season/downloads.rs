//! Page: the export of a season, the archive, and how to verify them.

use std::borrow::Cow;

use actix_web::http::header::{ContentDisposition, DispositionParam, DispositionType};
use actix_web::web::{Data, Path};
use actix_web::{HttpResponse, get};
use app::App;
use askama::Template;
use league::season::{SeasonState, Visibility};

use super::context::{SeasonHeader, SeasonTab};
use super::season_page::SeasonPage;
use crate::archive::archive_response;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::paths::SeasonPath;
use messages::Texts;

#[derive(Template)]
#[template(path = "downloads.html")]
struct DownloadsPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    ended: bool,
    sheets: Vec<Sheet>,
    ledgers: Vec<(String, String)>,
}
page_template!(DownloadsPage);

/// A part of a public season that everybody reads as a spreadsheet or as JSON.
struct Sheet {
    title: Cow<'static, str>,
    address: String,
}

/// What can be downloaded.
#[get("/clubs/{club}/seasons/{season}/downloads")]
pub async fn show_downloads(page: SeasonPage) -> PageResult {
    let (context, t) = (&page.context, page.t());
    let public = context.season.visibility == Visibility::Public
        && context.season.state != SeasonState::Draft;
    let place = format!("/public{}", context.link());
    let sheet = |title, name: &str| Sheet {
        title,
        address: format!("{place}/{name}"),
    };
    let sheets = vec![
        sheet(t.standings(), "standings"),
        sheet(t.pairings(), "pairings"),
        sheet(t.results(), "results"),
        sheet(t.weeks(), "weeks"),
    ];
    let ledgers = context.players.iter().map(|player| {
        let address = format!("{place}/players/{}/ledger.csv", player.id);
        (player.handle.clone(), address)
    });
    render_page(&DownloadsPage {
        layout: page.layout(),
        t,
        ended: context.season.state == SeasonState::Ended,
        sheets: if public { sheets } else { Vec::new() },
        ledgers: if public {
            ledgers.collect()
        } else {
            Vec::new()
        },
        header: page.header(SeasonTab::Downloads),
    })
}

/// The whole season in one file, as whoever may see the season may have it.
#[get("/clubs/{club}/seasons/{season}/downloads/season.json")]
pub async fn find_season_file(
    app: Data<App>,
    request: PageRequest,
    path: Path<SeasonPath>,
) -> PageResult {
    let season = path.key();
    let export = app::seasons::export_season(&app, request.viewer, season).await?;
    let name = DispositionParam::Filename("season.json".to_owned());
    Ok(HttpResponse::Ok()
        .insert_header(ContentDisposition {
            disposition: DispositionType::Attachment,
            parameters: vec![name],
        })
        .json(export))
}

/// The archive of a season that is over, for whoever may see it.
#[get("/clubs/{club}/seasons/{season}/downloads/season.zip")]
pub async fn find_season_archive(
    app: Data<App>,
    request: PageRequest,
    path: Path<SeasonPath>,
) -> PageResult {
    let season = path.key();
    let export = app::seasons::archive_season(&app, request.viewer, season).await?;
    Ok(archive_response(season, export).await?)
}
