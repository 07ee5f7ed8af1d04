//! Page: a week: its facts, its scenario, its opened lists.

use actix_web::get;
use actix_web::web::Path;
use app::Refusal;
use app::lists::{SealedListRow, WeekLists};
use askama::Template;
use document::lists::army_list::EntryDocument;
use league::week::WeekNo;

use super::panel::{ScenarioPanel, WeekPanel, load_scenario};
use crate::pages::frame::page_request::Layout;
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::pages::results::game::games_of_week;
use crate::pages::rounds::pairings::PairingRow;
use crate::pages::season::context::{SeasonHeader, SeasonTab};
use crate::pages::season::season_page::SeasonPage;
use crate::pages::words::factions::faction_name;
use crate::paths::WeekPath;
use crate::problem::Problem;
use messages::Texts;

#[derive(Template)]
#[template(path = "week.html")]
struct WeekPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    week: WeekPanel,
    scenario: ScenarioPanel,
    games: Vec<PairingRow>,
    lists: Option<Vec<ListPanel>>,
    runs: bool,
    before: Option<String>,
    after: Option<String>,
}
page_template!(WeekPage);

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

#[get("/clubs/{club}/seasons/{season}/weeks/{week}")]
pub async fn show_week(page: SeasonPage, path: Path<WeekPath>) -> PageResult {
    let key = path.key()?;
    let context = &page.context;
    let week = context.week(key.week)?;
    let neighbour = |number: Option<u8>| {
        let week = WeekNo::new(number?)?;
        context.week(week).ok().map(|_| context.week_link(week))
    };
    render_page(&WeekPage {
        layout: page.layout(),
        t: page.t(),
        header: page.header(SeasonTab::Week),
        week: WeekPanel::new(context, week, page.t()),
        scenario: load_scenario(&page, &week.0).await?,
        games: games_of_week(&page, key.week).await?,
        lists: opened_lists(&page, key.week).await?,
        runs: context.can_run(),
        before: neighbour(key.week.number().checked_sub(1)),
        after: neighbour(key.week.number().checked_add(1)),
    })
}

async fn opened_lists(page: &SeasonPage, week: WeekNo) -> Result<Option<Vec<ListPanel>>, Problem> {
    match app::lists::list_lists(&page.app, page.viewer(), page.key().week(week)).await {
        Ok(WeekLists::Opened(lists)) => {
            let mut views: Vec<ListPanel> = lists
                .into_iter()
                .map(|(player, list)| ListPanel {
                    player: page.context.handle(player).to_owned(),
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

fn opened_view(sealed: SealedListRow) -> OpenedPanel {
    OpenedPanel {
        faction: faction_name(&sealed.list.faction),
        points: sealed.points,
        receipt: hex::encode(sealed.digest),
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
