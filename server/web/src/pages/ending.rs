//! How a season ends: what ending it will do, and afterwards the prizes and the secret of its draws.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::standings::SeasonAwards;
use app::{Desk, Refusal};
use askama::Template;
use league::ids::{ClubId, SeasonId};
use league::season::{Phase, SeasonState};
use league::standings::Awarded;

use super::address::{self, InSeason};
use super::answer::{PageAnswer, framed, show_as};
use super::fields::Fields;
use super::moment::Moment;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::statistics::prize_words;
use super::texts::{Phrase, Texts};
use super::told::{Told, go_or_tell};
use super::visit::{Frame, Visit};

#[derive(Template)]
#[template(path = "ending.html")]
struct EndingPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    ended_at: Option<Moment>,
    runs: bool,
    running: bool,
    open_weeks: Vec<(u8, String, Phrase)>,
    places: Vec<(u32, String, i32)>,
    prizes: Vec<PrizeRow>,
    commitment: String,
    seed: Option<String>,
    told: Told,
}
framed!(EndingPage);

struct PrizeRow {
    title: Phrase,
    holders: String,
    value: String,
}

/// Places of the table that are named.
const PLACES: usize = 3;

/// What ending will do, or what it did.
#[get("/clubs/{club}/seasons/{season}/end")]
pub async fn show_ending(desk: Data<Desk>, visit: Visit, path: Path<InSeason>) -> PageAnswer {
    let (club, season) = path.ids();
    ending(&desk, &visit, club, season, Told::default()).await
}

/// Ends the season.
#[post("/clubs/{club}/seasons/{season}/end")]
pub async fn end_season(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InSeason>,
    _fields: Fields,
) -> PageAnswer {
    let (club, season) = path.ids();
    let ended = app::seasons::end_season(&desk, visit.actor()?, club, season).await;
    let next = |_| format!("{}/end", address::season(club, season));
    go_or_tell(ended, next, async |told| {
        ending(&desk, &visit, club, season, told).await
    })
    .await
}

async fn ending(desk: &Desk, visit: &Visit, club: ClubId, id: SeasonId, told: Told) -> PageAnswer {
    let t = visit.t;
    let scene = SeasonScene::load(desk, visit, club, id).await?;
    let ended = scene.season.state == SeasonState::Ended;
    if !ended && !scene.runs() {
        return Err(Refusal::NotFound.into());
    }
    let found = app::standings::find_standings(desk, visit.viewer, club, id, None).await?;
    let awards = app::standings::list_awards(desk, visit.viewer, club, id).await?;
    let export = app::seasons::export_season(desk, visit.viewer, club, id).await?;
    let open = scene
        .weeks
        .iter()
        .filter(|(_, phase)| *phase < Phase::Closed);
    let rows = found.standings.rows.iter();
    let page = EndingPage {
        frame: visit.frame(),
        t,
        head: scene.head(visit, Tab::Ending),
        ended_at: scene.season.ended_at.map(|at| scene.clock(t).at(at)),
        runs: scene.runs(),
        running: scene.season.state == SeasonState::Started,
        open_weeks: open
            .map(|(week, phase)| {
                let desk = format!("{}/pairing", scene.week_link(week.week));
                (
                    week.week.number(),
                    desk,
                    super::week_panel::phase_word(t, *phase),
                )
            })
            .collect(),
        places: rows
            .take_while(|row| row.rank as usize <= PLACES)
            .map(|row| {
                (
                    row.rank,
                    scene.handle(row.player).to_owned(),
                    row.total.get(),
                )
            })
            .collect(),
        prizes: prizes(&scene, t, &awards),
        commitment: export.seed_commitment.unwrap_or_default(),
        seed: export.seed,
        told,
    };
    show_as(page.told.status(), &page)
}

fn prizes(scene: &SeasonScene, t: &Texts, awards: &SeasonAwards) -> Vec<PrizeRow> {
    let row = |award: &Awarded| {
        let holders = award.holders.iter().map(|player| scene.handle(*player));
        let (title, value) = prize_words(t, award);
        PrizeRow {
            title,
            holders: holders.collect::<Vec<_>>().join(", "),
            value,
        }
    };
    awards.awards.iter().map(row).collect()
}
