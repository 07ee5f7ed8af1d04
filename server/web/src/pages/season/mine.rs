//! Page: a player's own week: what is due, availability, withdrawal.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::{App, Refusal};
use askama::Template;
use league::keys::SeasonKey;
use league::season::{SeasonState, WeekPhase};

use super::context::{SeasonHeader, SeasonTab};
use super::reminders::{ReminderNotice, find_notices};
use super::season_page::SignedInSeasonPage;
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::{FormErrors, redirect_or_show_errors};
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page_with_status};
use crate::pages::frame::urls;
use crate::pages::results::game::games_of_week;
use crate::pages::rounds::pairings::PairingRow;
use crate::pages::week::panel::{ScenarioPanel, WeekPanel, load_scenario};
use crate::pages::words::local_time::LocalTime;
use crate::paths::{SeasonPath, WeekPath};
use crate::problem::Problem;
use messages::Texts;

#[derive(Template)]
#[template(path = "mine.html")]
struct MinePage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    handle: String,
    weeks: Vec<MyWeek>,
    withdrawn: bool,
    running: bool,
    errors: FormErrors,
}
page_template!(MinePage);

struct MyWeek {
    week: WeekPanel,
    scenario: ScenarioPanel,
    list: ListProgress,
    nights: Vec<(String, LocalTime, bool)>,
    paired: bool,
    /// One for each round of the week.
    games: Vec<PairingRow>,
    notices: Vec<ReminderNotice>,
}

impl MyWeek {
    /// Whether the player comes on no night of a week that is still to be paired.
    fn excused(&self) -> bool {
        !self.paired && !self.nights.is_empty() && self.nights.iter().all(|(_, _, comes)| !comes)
    }
}

enum ListProgress {
    Nothing,
    Draft,
    Sealed { points: u32, at: LocalTime },
}

#[get("/clubs/{club}/seasons/{season}/mine")]
pub async fn show_mine(page: SignedInSeasonPage) -> PageResult {
    mine_page(&page, FormErrors::default()).await
}

/// Says when the player can come.
#[post("/clubs/{club}/seasons/{season}/weeks/{week}/availability")]
pub async fn tell_availability(
    app: Data<App>,
    request: PageRequest,
    path: Path<WeekPath>,
    fields: FormData,
) -> PageResult {
    let week = path.key()?;
    let (actor, nights) = (request.actor()?, fields.values("nights"));
    let done = app::seasons::tell_availability(&app, actor, week, nights).await;
    redirect_to_mine(app, request, week.season, done).await
}

/// Withdraws from the season.
#[post("/clubs/{club}/seasons/{season}/withdraw")]
pub async fn withdraw(
    app: Data<App>,
    request: PageRequest,
    path: Path<SeasonPath>,
    _fields: FormData,
) -> PageResult {
    let season = path.key();
    let SignedInSeasonPage { page, actor } = SignedInSeasonPage::load(app, request, season).await?;
    let player = page.context.own.ok_or(Refusal::NotFound)?.id;
    let done = app::seasons::withdraw_player(&page.app, actor, season, player).await;
    redirect_to_mine(page.app, page.request, season, done.map(|_| ())).await
}

async fn redirect_to_mine(
    app: Data<App>,
    request: PageRequest,
    season: SeasonKey,
    done: Result<(), Refusal>,
) -> PageResult {
    let next = |()| format!("{}/mine", urls::season(season));
    redirect_or_show_errors(done, next, async |errors| {
        let page = SignedInSeasonPage::load(app, request, season).await?;
        mine_page(&page, errors).await
    })
    .await
}

async fn mine_page(page: &SignedInSeasonPage, errors: FormErrors) -> PageResult {
    let context = &page.context;
    let own = context.own.clone().ok_or(Refusal::NotFound)?;
    let mut weeks = Vec::new();
    for week in context.current_weeks() {
        if own.plays_in(week.0.week) {
            weeks.push(my_week(page, week).await?);
        }
    }
    let mine = MinePage {
        layout: page.layout(),
        t: page.t(),
        header: page.header(SeasonTab::Mine),
        handle: own.handle,
        weeks,
        withdrawn: own.left_after.is_some(),
        running: context.season.state == SeasonState::Started,
        errors,
    };
    render_page_with_status(mine.errors.status(), &mine)
}

async fn my_week(
    page: &SignedInSeasonPage,
    week: &(app::seasons::Week, WeekPhase),
) -> Result<MyWeek, Problem> {
    let (app, context, t) = (&page.app, &page.context, page.t());
    let (actor, key) = (page.actor, page.key().week(week.0.week));
    let times = context.times(t);
    let list = match app::lists::find_own_list(app, actor, key).await {
        Ok(own) => match (own.sealed, own.draft) {
            (Some(sealed), _) => ListProgress::Sealed {
                points: sealed.points,
                at: times.date_time(sealed.sealed_at),
            },
            (None, Some(_)) => ListProgress::Draft,
            (None, None) => ListProgress::Nothing,
        },
        Err(Refusal::NotFound) => ListProgress::Nothing,
        Err(other) => return Err(other.into()),
    };
    let games = games_of_week(page, key.week).await?;
    let coming = match context.season.state {
        SeasonState::Started => app::seasons::find_availability(app, actor, key).await?,
        SeasonState::Draft | SeasonState::Ended => Vec::new(),
    };
    let nights = week.0.nights.iter().map(|night| {
        let comes = coming.contains(&night.key);
        (night.key.clone(), times.date_time(night.begins.1), comes)
    });
    Ok(MyWeek {
        scenario: load_scenario(page, &week.0).await?,
        nights: nights.collect(),
        list,
        notices: find_notices(page, key.week).await?,
        games: games.into_iter().filter(|game| game.mine).collect(),
        paired: week.1 >= WeekPhase::Paired,
        week: WeekPanel::new(context, week, t),
    })
}
