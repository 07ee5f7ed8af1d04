//! A week's page: its facts, its scenario, its opened lists.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::lists::{SealedList, WeekLists};
use app::{Desk, Refusal};
use askama::Template;
use document::list::EntryDocument;
use league::week::WeekNo;

use super::address::InWeek;
use super::answer::{PageAnswer, framed, show};
use super::factions::faction_name;
use super::games::of_week;
use super::pairings::PairingRow;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::Texts;
use super::visit::{Frame, Visit};
use super::week_panel::{ScenarioPanel, WeekPanel, scenario};
use crate::problem::Problem;

#[derive(Template)]
#[template(path = "week.html")]
struct WeekPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    week: WeekPanel,
    scenario: ScenarioPanel,
    games: Vec<PairingRow>,
    lists: Option<Vec<ListPanel>>,
    runs: bool,
    before: Option<String>,
    after: Option<String>,
}
framed!(WeekPage);

struct ListPanel {
    player: String,
    list: Option<OpenedPanel>,
}

struct OpenedPanel {
    faction: String,
    points: u32,
    receipt: String,
    late_minutes: Option<u32>,
    stands_in: bool,
    entries: Vec<EntryLine>,
}

struct EntryLine {
    unit: String,
    models: u32,
    options: String,
}

/// A week's page.
#[get("/clubs/{club}/seasons/{season}/weeks/{week}")]
pub async fn show_week(desk: Data<Desk>, visit: Visit, path: Path<InWeek>) -> PageAnswer {
    let (club, season, number) = path.ids()?;
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let week = scene.week(number)?;
    let neighbour = |number: Option<u8>| {
        let week = WeekNo::new(number?)?;
        scene.week(week).ok().map(|_| scene.week_link(week))
    };
    let lists = opened_lists(&desk, &visit, &scene, week.0.week).await?;
    let page = WeekPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(&visit, Tab::Week),
        week: WeekPanel::new(&scene, week, visit.t),
        scenario: scenario(&desk, &visit, &scene, &week.0).await?,
        games: of_week(&desk, &visit, &scene, number).await?,
        lists,
        runs: scene.runs(),
        before: neighbour(number.number().checked_sub(1)),
        after: neighbour(number.number().checked_add(1)),
    };
    show(&page)
}

async fn opened_lists(
    desk: &Desk,
    visit: &Visit,
    scene: &SeasonScene,
    week: WeekNo,
) -> Result<Option<Vec<ListPanel>>, Problem> {
    let (club, season) = (scene.season.club, scene.season.id);
    match app::lists::list_lists(desk, visit.viewer, club, season, week).await {
        Ok(WeekLists::Opened(lists)) => {
            let mut views: Vec<ListPanel> = lists
                .into_iter()
                .map(|(player, list)| ListPanel {
                    player: scene.handle(player).to_owned(),
                    list: list.map(opened_view),
                })
                .collect();
            views.sort_by(|one, other| one.player.cmp(&other.player));
            Ok(Some(views))
        }
        Ok(WeekLists::States(_)) | Err(Refusal::NotFound) => Ok(None),
        Err(other) => Err(other.into()),
    }
}

fn opened_view(sealed: SealedList) -> OpenedPanel {
    OpenedPanel {
        faction: faction_name(&sealed.list.faction),
        points: sealed.points,
        receipt: document::hex(&sealed.digest),
        late_minutes: sealed.late_minutes,
        stands_in: sealed.stands_in,
        entries: sealed.list.entries.iter().map(entry_line).collect(),
    }
}

fn entry_line(entry: &EntryDocument) -> EntryLine {
    let options = entry.options.iter().map(|(key, &taken)| {
        let name = key.replace('-', " ");
        if taken > 1 {
            format!("{taken} × {name}")
        } else {
            name
        }
    });
    EntryLine {
        unit: faction_name(&entry.unit),
        models: entry.models,
        options: options.collect::<Vec<_>>().join(", "),
    }
}
