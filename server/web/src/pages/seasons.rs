//! A season's page: what is on now, its weeks, its players, its rules.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::Desk;
use app::seasons::JoinSeason;
use askama::Template;
use document::catalogue::CatalogueDocument;
use league::ids::{ClubId, SeasonId};
use league::season::SeasonState;

use super::address::{self, InSeason};
use super::answer::{PageAnswer, framed, show_as};
use super::clubs::season_state;
use super::factions::faction_name;
use super::fields::Fields;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::{Phrase, Texts};
use super::told::{Told, go_or_tell};
use super::visit::{Frame, Visit};
use super::week_panel::{ScenarioPanel, WeekPanel, scenario};
use crate::problem::Problem;

#[derive(Template)]
#[template(path = "season.html")]
struct SeasonPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    state: Phrase,
    draft: bool,
    ended: bool,
    runs: bool,
    plays: bool,
    current: Vec<(WeekPanel, ScenarioPanel)>,
    weeks: Vec<WeekPanel>,
    players: Vec<PlayerLine>,
    rules: Vec<String>,
    commitment: Option<String>,
    joining: Option<JoinForm>,
    told: Told,
}
framed!(SeasonPage);

struct PlayerLine {
    link: String,
    handle: String,
    faction: String,
    joined: Option<u8>,
    left: bool,
}

struct JoinForm {
    factions: Vec<(String, String)>,
    nights: Vec<String>,
    handle: String,
}

/// A season's page.
#[get("/clubs/{club}/seasons/{season}")]
pub async fn show_season(desk: Data<Desk>, visit: Visit, path: Path<InSeason>) -> PageAnswer {
    let (club, season) = path.ids();
    season_page(&desk, &visit, club, season, Told::default()).await
}

/// Joins the season.
#[post("/clubs/{club}/seasons/{season}/join")]
pub async fn join(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InSeason>,
    fields: Fields,
) -> PageAnswer {
    let (club, season) = path.ids();
    let command = JoinSeason {
        handle: fields.text("handle").to_owned(),
        faction: fields.text("faction").to_owned(),
        nights: fields.all("nights"),
    };
    let joined = app::seasons::join_season(&desk, visit.actor()?, club, season, command).await;
    go_or_tell(
        joined,
        |_| address::season(club, season),
        async |told| season_page(&desk, &visit, club, season, told).await,
    )
    .await
}

/// Starts a season that was set up.
#[post("/clubs/{club}/seasons/{season}/start")]
pub async fn start(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InSeason>,
    _fields: Fields,
) -> PageAnswer {
    let (club, season) = path.ids();
    let started = app::seasons::start_season(&desk, visit.actor()?, club, season).await;
    go_or_tell(
        started,
        |_| address::season(club, season),
        async |told| season_page(&desk, &visit, club, season, told).await,
    )
    .await
}

async fn season_page(
    desk: &Desk,
    visit: &Visit,
    club: ClubId,
    id: SeasonId,
    told: Told,
) -> PageAnswer {
    let scene = SeasonScene::load(desk, visit, club, id).await?;
    let mut current = Vec::new();
    for week in scene.current() {
        let view = WeekPanel::new(&scene, week, visit.t);
        current.push((view, scenario(desk, visit, &scene, &week.0).await?));
    }
    let joining = join_form(desk, visit, &scene).await?;
    let policy = scene.season.policy.read();
    let page = SeasonPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(visit, Tab::Overview),
        state: season_state(visit.t, scene.season.state),
        draft: scene.season.state == SeasonState::Draft,
        ended: scene.season.state == SeasonState::Ended,
        runs: scene.runs(),
        plays: scene.own.is_some(),
        current,
        weeks: scene
            .weeks
            .iter()
            .map(|week| WeekPanel::new(&scene, week, visit.t))
            .collect(),
        players: scene
            .players
            .iter()
            .map(|player| player_line(&scene, player))
            .collect(),
        rules: policy
            .map(|policy| visit.t.speech().rules(&policy))
            .unwrap_or_default(),
        commitment: scene.season.seed_commitment.as_deref().map(document::hex),
        joining,
        told,
    };
    show_as(page.told.status(), &page)
}

fn player_line(scene: &SeasonScene, player: &app::seasons::Player) -> PlayerLine {
    let joined = player.joined_week.number();
    PlayerLine {
        link: address::player(scene.season.club, scene.season.id, player.id),
        handle: player.handle.clone(),
        faction: faction_name(&player.faction),
        joined: (joined > 1).then_some(joined),
        left: player.left_after.is_some(),
    }
}

/// For members who do not play yet, while the season is not over.
async fn join_form(
    desk: &Desk,
    visit: &Visit,
    scene: &SeasonScene,
) -> Result<Option<JoinForm>, Problem> {
    let (Some(actor), Some(_), None) = (visit.viewer, scene.role, &scene.own) else {
        return Ok(None);
    };
    let season = &scene.season;
    let Some((week, _)) = scene.current().first().copied() else {
        return Ok(None);
    };
    if season.state == SeasonState::Ended {
        return Ok(None);
    }
    let (club, id, number) = (season.club, season.catalogue, week.catalogue_number);
    let catalogue: CatalogueDocument =
        app::catalogues::find_catalogue_version(desk, actor, club, id, number).await?;
    let factions = catalogue.factions.into_iter();
    Ok(Some(JoinForm {
        factions: factions
            .map(|faction| (faction.key, faction.name))
            .collect(),
        nights: week.nights.iter().map(|night| night.key.clone()).collect(),
        handle: app::accounts::find_account(desk, actor).await?.account.name,
    }))
}
