//! Page: a player's certificate, once the season is over: finishing an army is worth a sheet of paper.

use actix_web::get;
use actix_web::web::Path;
use app::Refusal;
use askama::Template;
use league::ids::PlayerId;
use league::standings::PrizeAward;

use super::context::{SeasonHeader, SeasonTab};
use super::season_page::SeasonPage;
use super::statistics::prize_text;
use crate::pages::frame::page_request::Layout;
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::paths::PlayerPath;
use messages::Texts;

#[derive(Template)]
#[template(path = "certificate.html")]
struct CertificatePage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    handle: String,
    faction: String,
    rank: u32,
    of: usize,
    points: i32,
    record: String,
    painted: Option<u32>,
    awards: Vec<String>,
    weeks: usize,
    ended: String,
}
page_template!(CertificatePage);

/// The certificate of one player.
#[get("/clubs/{club}/seasons/{season}/players/{player}/certificate")]
pub async fn show_certificate(page: SeasonPage, path: Path<PlayerPath>) -> PageResult {
    let (season, player) = path.ids();
    let SeasonPage { app, context, .. } = &page;
    let (viewer, t) = (page.viewer(), page.t());
    let ended = context.season.ended_at.ok_or(Refusal::NotFound)?;
    let standings = app::standings::find_standings(app, viewer, season, None).await?;
    let standings = standings.standings;
    let row = standings.row_of(player).ok_or(Refusal::NotFound)?;
    let army = app::lists::find_army(app, viewer, season, player).await?;
    let fielded = army.iter().filter_map(|week| week.fielded.as_ref());
    let painted: u32 = fielded.map(|list| list.newly_finished.get()).sum();
    let awards = app::standings::list_awards(app, viewer, season).await?;
    let record = row.record;
    render_page(&CertificatePage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Standings),
        handle: context.handle(player).to_owned(),
        faction: context.faction(player),
        rank: row.rank,
        of: standings.rows.len(),
        points: row.total.get(),
        record: t.certificate_record(record.won, record.drawn, record.lost),
        painted: (painted > 0).then_some(painted),
        awards: won_by(t, &awards.awards, player),
        weeks: context.weeks.len(),
        ended: context.times(t).day(ended),
    })
}

fn won_by(t: Texts, awards: &[PrizeAward], player: PlayerId) -> Vec<String> {
    let won = awards
        .iter()
        .filter(|award| award.holders.contains(&player));
    won.map(|award| {
        let (prize, value) = prize_text(t, award);
        format!("{prize} ({value})")
    })
    .collect()
}
