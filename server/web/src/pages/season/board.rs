//! Page: the board for those who run a season, with the list states of the weeks under way.

use std::borrow::Cow;

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::lists::{ListState, WeekLists};
use app::seasons::Week;
use app::{App, Refusal};
use askama::Template;
use league::ids::PlayerId;
use league::keys::SeasonKey;
use league::season::WeekPhase;
use league::week::WeekNo;

use super::context::{SeasonHeader, SeasonTab};
use super::reminders::{self, ReminderPanel};
use super::season_page::SignedInSeasonPage;
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::{FormErrors, redirect_or_show_errors};
use crate::pages::frame::form_reader::FormReader;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page_with_status};
use crate::pages::frame::urls;
use crate::pages::week::panel::WeekPanel;
use crate::pages::words::factions::faction_name;
use crate::paths::WeekPath;
use crate::problem::Problem;
use messages::Texts;

#[derive(Template)]
#[template(path = "board.html")]
struct BoardPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    weeks: Vec<WeekBoard>,
    errors: FormErrors,
}
page_template!(BoardPage);

struct WeekBoard {
    week: WeekPanel,
    sealed: usize,
    states: Vec<StateLine>,
    opened: bool,
    may_open: bool,
    reminders: Vec<ReminderPanel>,
    leave: LeaveFields,
}

/// What stands in the form of a leave.
struct LeaveFields {
    player: String,
    reason: String,
}

impl LeaveFields {
    fn new(typed: Option<&FormData>) -> Self {
        let typed = |name: &str| typed.map_or_else(String::new, |it| it.typed(name).to_owned());
        Self {
            player: typed("player"),
            reason: typed("reason"),
        }
    }
}

struct StateLine {
    player: String,
    handle: String,
    faction: String,
    nights: String,
    state: ListState,
    word: Cow<'static, str>,
}

#[get("/clubs/{club}/seasons/{season}/board")]
pub async fn show_board(page: SignedInSeasonPage) -> PageResult {
    board_page(&page, None, FormErrors::default()).await
}

/// Gives a player leave to hand in late.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/late-leaves")]
pub async fn grant_leave(
    app: Data<App>,
    request: PageRequest,
    path: Path<WeekPath>,
    fields: FormData,
) -> PageResult {
    let week = path.key()?;
    let actor = request.actor()?;
    let done = match parse_leave(&fields, request.t) {
        Ok(LeaveForm { player, reason }) => {
            app::lists::grant_late_leave(&app, actor, week, player, &reason).await
        }
        Err(refusal) => Err(refusal),
    };
    let typed = Some((week.week, &fields));
    redirect_to_board(app, request, week.season, typed, done).await
}

/// Whom the leave is for, and why.
struct LeaveForm {
    player: PlayerId,
    reason: String,
}

fn parse_leave(fields: &FormData, t: Texts) -> Result<LeaveForm, Refusal> {
    let mut form = FormReader::new(fields);
    let leave = LeaveForm {
        player: PlayerId(form.id("player", &t.leave_for())),
        reason: form.text("reason"),
    };
    form.finish(leave)
}

/// Opens the lists of a week whose deadline is over.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/lists/open")]
pub async fn open_lists(
    app: Data<App>,
    request: PageRequest,
    path: Path<WeekPath>,
    _fields: FormData,
) -> PageResult {
    let week = path.key()?;
    let done = app::lists::open_lists(&app, request.actor()?, week).await;
    redirect_to_board(app, request, week.season, None, done).await
}

/// Back to the board, with the refusal if there was one and what was typed for a week.
///
/// # Errors
/// When the server cannot tell.
pub async fn redirect_to_board(
    app: Data<App>,
    request: PageRequest,
    season: SeasonKey,
    typed: Option<(WeekNo, &FormData)>,
    done: Result<(), Refusal>,
) -> PageResult {
    let next = |()| format!("{}/board", urls::season(season));
    redirect_or_show_errors(done, next, async |errors| {
        let page = SignedInSeasonPage::load(app, request, season).await?;
        board_page(&page, typed, errors).await
    })
    .await
}

async fn board_page(
    page: &SignedInSeasonPage,
    typed: Option<(WeekNo, &FormData)>,
    errors: FormErrors,
) -> PageResult {
    let context = &page.context;
    if !context.can_run() {
        return Err(Refusal::NotFound.into());
    }
    let mut weeks = Vec::new();
    for week in context.current_weeks() {
        let typed = typed.filter(|(of, _)| *of == week.0.week);
        let leave = LeaveFields::new(typed.map(|(_, fields)| fields));
        weeks.push(week_board(page, week, leave).await?);
    }
    let board = BoardPage {
        layout: page.layout(),
        t: page.t(),
        header: page.header(SeasonTab::Board),
        weeks,
        errors,
    };
    render_page_with_status(board.errors.status(), &board)
}

async fn week_board(
    page: &SignedInSeasonPage,
    week: &(Week, WeekPhase),
    leave: LeaveFields,
) -> Result<WeekBoard, Problem> {
    let (context, t) = (&page.context, page.t());
    let number = week.0.week;
    let lists = app::lists::list_lists(&page.app, page.viewer(), page.key().week(number)).await?;
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
    let playing = context
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
    let panel = WeekPanel::new(context, week, t);
    Ok(WeekBoard {
        reminders: reminders::find_panels(page, &panel, number).await?,
        week: panel,
        sealed: states
            .iter()
            .filter(|line| line.state == ListState::Sealed)
            .count(),
        states,
        opened,
        may_open: week.1 == WeekPhase::ListsDue,
        leave,
    })
}

fn state_word(t: Texts, state: ListState) -> Cow<'static, str> {
    match state {
        ListState::Missing => t.list_missing(),
        ListState::Draft => t.list_draft(),
        ListState::Sealed => t.list_sealed_state(),
    }
}
