//! The board of those who run a season: who has handed in for the weeks under way.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::Desk;
use app::lists::{ListState, WeekLists};
use app::seasons::Week;
use askama::Template;
use league::ids::{ClubId, PlayerId, SeasonId};
use league::season::Phase;

use super::address::{self, InSeason, InWeek};
use super::answer::{PageAnswer, framed, show_as};
use super::factions::faction_name;
use super::fields::Fields;
use super::nudges::{self, NudgePanel};
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::{Phrase, Texts};
use super::told::{Told, go_or_tell};
use super::visit::{Frame, Visit};
use super::week_panel::WeekPanel;
use crate::problem::Problem;

#[derive(Template)]
#[template(path = "board.html")]
struct BoardPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    weeks: Vec<WeekBoard>,
    told: Told,
}
framed!(BoardPage);

struct WeekBoard {
    week: WeekPanel,
    sealed: usize,
    states: Vec<StateLine>,
    opened: bool,
    may_open: bool,
    nudges: Vec<NudgePanel>,
}

struct StateLine {
    player: String,
    handle: String,
    faction: String,
    nights: String,
    state: ListState,
    word: Phrase,
}

/// The board.
#[get("/clubs/{club}/seasons/{season}/board")]
pub async fn show_board(desk: Data<Desk>, visit: Visit, path: Path<InSeason>) -> PageAnswer {
    let (club, season) = path.ids();
    board_page(&desk, &visit, club, season, Told::default()).await
}

/// Gives a player leave to hand in late.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/late-leaves")]
pub async fn grant_leave(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InWeek>,
    fields: Fields,
) -> PageAnswer {
    let (club, season, week) = path.ids()?;
    let player = PlayerId(fields.value("player").unwrap_or_default());
    let (actor, reason) = (visit.actor()?, fields.text("reason"));
    let done = app::lists::grant_late_leave(&desk, actor, club, season, week, player, reason).await;
    told(&desk, &visit, club, season, done).await
}

/// Opens the lists of a week whose deadline is over.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/lists/open")]
pub async fn open_lists(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InWeek>,
    _fields: Fields,
) -> PageAnswer {
    let (club, season, week) = path.ids()?;
    let done = app::lists::open_lists(&desk, visit.actor()?, club, season, week).await;
    told(&desk, &visit, club, season, done).await
}

/// Back to the board, with the refusal if there was one.
///
/// # Errors
/// When the server cannot tell.
pub async fn told(
    desk: &Desk,
    visit: &Visit,
    club: ClubId,
    season: SeasonId,
    done: Result<(), app::Refusal>,
) -> PageAnswer {
    let next = |()| format!("{}/board", address::season(club, season));
    go_or_tell(done, next, async |told| {
        board_page(desk, visit, club, season, told).await
    })
    .await
}

async fn board_page(
    desk: &Desk,
    visit: &Visit,
    club: ClubId,
    id: SeasonId,
    told: Told,
) -> PageAnswer {
    visit.actor()?;
    let scene = SeasonScene::load(desk, visit, club, id).await?;
    if !scene.runs() {
        return Err(app::Refusal::NotFound.into());
    }
    let mut weeks = Vec::new();
    for week in scene.current() {
        weeks.push(week_board(desk, visit, &scene, week).await?);
    }
    let page = BoardPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(visit, Tab::Board),
        weeks,
        told,
    };
    show_as(page.told.status(), &page)
}

async fn week_board(
    desk: &Desk,
    visit: &Visit,
    scene: &SeasonScene,
    week: &(Week, Phase),
) -> Result<WeekBoard, Problem> {
    let (club, season, t) = (scene.season.club, scene.season.id, visit.t);
    let number = week.0.week;
    let lists = app::lists::list_lists(desk, visit.viewer, club, season, number).await?;
    let opened = matches!(lists, WeekLists::Opened(_));
    let state = |player: PlayerId| match &lists {
        WeekLists::States(states) => {
            let found = states.iter().find(|(who, _)| *who == player);
            found.map_or(ListState::Missing, |(_, state)| *state)
        }
        WeekLists::Opened(lists) => {
            let found = lists.iter().find(|(who, _)| *who == player);
            if found.is_some_and(|(_, list)| list.is_some()) {
                ListState::Sealed
            } else {
                ListState::Missing
            }
        }
    };
    let playing = scene
        .players
        .iter()
        .filter(|player| player.plays_in(number));
    let mut states: Vec<StateLine> = playing
        .map(|player| StateLine {
            player: player.id.to_string(),
            handle: player.handle.clone(),
            faction: faction_name(&player.faction),
            nights: player.nights.join(", "),
            state: state(player.id),
            word: state_word(t, state(player.id)),
        })
        .collect();
    states.sort_by_key(|line| line.state as u8);
    let panel = WeekPanel::new(scene, week, t);
    Ok(WeekBoard {
        nudges: nudges::panels(desk, visit.actor()?, scene, &panel, number, t).await?,
        week: panel,
        sealed: states
            .iter()
            .filter(|line| line.state == ListState::Sealed)
            .count(),
        states,
        opened,
        may_open: week.1 == Phase::ListsDue,
    })
}

fn state_word(t: &Texts, state: ListState) -> Phrase {
    match state {
        ListState::Missing => t.state_missing,
        ListState::Draft => t.state_drafted,
        ListState::Sealed => t.state_sealed,
    }
}
