//! What of a season can be taken home, and how to check it.

use actix_web::http::header::{ContentDisposition, DispositionParam, DispositionType};
use actix_web::web::{Data, Path};
use actix_web::{HttpResponse, get};
use app::Desk;
use askama::Template;
use league::season::{SeasonState, Visibility};

use super::address::InSeason;
use super::answer::{PageAnswer, framed, show};
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::{Phrase, Texts};
use super::visit::{Frame, Visit};
use crate::archive::take_home;

#[derive(Template)]
#[template(path = "downloads.html")]
struct DownloadsPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    ended: bool,
    sheets: Vec<Sheet>,
    ledgers: Vec<(String, String)>,
}
framed!(DownloadsPage);

/// A part of a public season that everybody reads as a spreadsheet or as JSON.
struct Sheet {
    title: Phrase,
    address: String,
}

/// What can be downloaded.
#[get("/clubs/{club}/seasons/{season}/downloads")]
pub async fn show_downloads(desk: Data<Desk>, visit: Visit, path: Path<InSeason>) -> PageAnswer {
    let (club, season) = path.ids();
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let t = visit.t;
    let public =
        scene.season.visibility == Visibility::Public && scene.season.state != SeasonState::Draft;
    let place = format!("/public{}", scene.link());
    let sheet = |title, name: &str| Sheet {
        title,
        address: format!("{place}/{name}"),
    };
    let sheets = vec![
        sheet(t.standings, "standings"),
        sheet(t.pairings, "pairings"),
        sheet(t.desk.results, "results"),
        sheet(t.weeks, "weeks"),
    ];
    let ledgers = scene.players.iter().map(|player| {
        let address = format!("{place}/players/{}/ledger.csv", player.id);
        (player.handle.clone(), address)
    });
    show(&DownloadsPage {
        frame: visit.frame(),
        t,
        ended: scene.season.state == SeasonState::Ended,
        sheets: if public { sheets } else { Vec::new() },
        ledgers: if public {
            ledgers.collect()
        } else {
            Vec::new()
        },
        head: scene.head(&visit, Tab::Downloads),
    })
}

/// The whole season in one file, as whoever may see the season may have it.
#[get("/clubs/{club}/seasons/{season}/downloads/season.json")]
pub async fn find_season_file(desk: Data<Desk>, visit: Visit, path: Path<InSeason>) -> PageAnswer {
    let (club, season) = path.ids();
    let export = app::seasons::export_season(&desk, visit.viewer, club, season).await?;
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
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InSeason>,
) -> PageAnswer {
    let (club, season) = path.ids();
    let export = app::seasons::archive_season(&desk, visit.viewer, club, season).await?;
    Ok(take_home(season, export).await?)
}
