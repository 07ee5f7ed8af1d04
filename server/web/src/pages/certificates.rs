//! A player's certificate, once the season is over: finishing an army is worth a sheet of paper.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::{Desk, Refusal};
use askama::Template;
use league::ids::PlayerId;
use league::standings::Awarded;

use super::answer::{PageAnswer, framed, show};
use super::factions::faction_name;
use super::players::InPlayer;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::statistics::prize_words;
use super::texts::Texts;
use super::visit::{Frame, Visit};

#[derive(Template)]
#[template(path = "certificate.html")]
struct CertificatePage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
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
framed!(CertificatePage);

/// The certificate of one player.
#[get("/clubs/{club}/seasons/{season}/players/{player}/certificate")]
pub async fn show_certificate(desk: Data<Desk>, visit: Visit, path: Path<InPlayer>) -> PageAnswer {
    let (club, season, player) = path.ids();
    let (viewer, t) = (visit.viewer, visit.t);
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let ended = scene.season.ended_at.ok_or(Refusal::NotFound)?;
    let standings = app::standings::find_standings(&desk, viewer, club, season, None).await?;
    let standings = standings.standings;
    let row = standings.row_of(player).ok_or(Refusal::NotFound)?;
    let army = app::lists::find_army(&desk, viewer, club, season, player).await?;
    let fielded = army.iter().filter_map(|week| week.fielded.as_ref());
    let painted: u32 = fielded.map(|list| list.newly_finished.get()).sum();
    let awards = app::standings::list_awards(&desk, viewer, club, season).await?;
    let who = scene.players.iter().find(|known| known.id == player);
    let record = row.record;
    let page = CertificatePage {
        frame: visit.frame(),
        t,
        head: scene.head(&visit, Tab::Standings),
        handle: scene.handle(player).to_owned(),
        faction: who
            .map(|who| faction_name(&who.faction))
            .unwrap_or_default(),
        rank: row.rank,
        of: standings.rows.len(),
        points: row.total.get(),
        record: t
            .hall
            .certificate_record
            .with_all(&[&record.won, &record.drawn, &record.lost]),
        painted: (painted > 0).then_some(painted),
        awards: won_by(t, &awards.awards, player),
        weeks: scene.weeks.len(),
        ended: scene.clock(t).day(ended),
    };
    show(&page)
}

fn won_by(t: &Texts, awards: &[Awarded], player: PlayerId) -> Vec<String> {
    let won = awards
        .iter()
        .filter(|award| award.holders.contains(&player));
    won.map(|award| {
        let (prize, value) = prize_words(t, award);
        format!("{prize} ({value})")
    })
    .collect()
}
