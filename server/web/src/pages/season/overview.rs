//! Page: a season: what is on now, its weeks, its players, its rules.

use std::borrow::Cow;

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::App;
use app::seasons::{JoinSeason, parse_policy};
use askama::Template;
use document::catalogue::CatalogueDocument;
use league::season::SeasonState;

use super::context::{SeasonContext, SeasonHeader, SeasonTab};
use super::season_page::SeasonPage;
use crate::pages::club::overview::state_label;
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::{FormErrors, redirect_or_show_errors};
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page_with_status};
use crate::pages::frame::urls;
use crate::pages::week::panel::{ScenarioPanel, WeekPanel, load_scenario};
use crate::pages::words::factions::faction_name;
use crate::paths::SeasonPath;
use crate::problem::Problem;
use messages::Texts;

#[derive(Template)]
#[template(path = "season.html")]
struct SeasonOverviewPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    state: Cow<'static, str>,
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
    errors: FormErrors,
}
page_template!(SeasonOverviewPage);

struct PlayerLine {
    link: String,
    handle: String,
    faction: String,
    joined: Option<u8>,
    left: bool,
}

struct JoinForm {
    /// Key and name of each, and whether it is chosen.
    factions: Vec<(String, String, bool)>,
    /// Key of each, and whether the player usually comes.
    nights: Vec<(String, bool)>,
    handle: String,
}

#[get("/clubs/{club}/seasons/{season}")]
pub async fn show_season(page: SeasonPage) -> PageResult {
    overview_page(&page, None, FormErrors::default()).await
}

#[post("/clubs/{club}/seasons/{season}/join")]
pub async fn join(
    app: Data<App>,
    request: PageRequest,
    path: Path<SeasonPath>,
    fields: FormData,
) -> PageResult {
    let season = path.key();
    let command = JoinSeason {
        handle: fields.text("handle").to_owned(),
        faction: fields.text("faction").to_owned(),
        nights: fields.values("nights"),
    };
    let joined = app::seasons::join_season(&app, request.actor()?, season, command).await;
    redirect_or_show_errors(
        joined,
        |_| urls::season(season),
        async |errors| {
            let page = SeasonPage::load(app, request, season).await?;
            overview_page(&page, Some(&fields), errors).await
        },
    )
    .await
}

/// Starts a season that was set up.
#[post("/clubs/{club}/seasons/{season}/start")]
pub async fn start(
    app: Data<App>,
    request: PageRequest,
    path: Path<SeasonPath>,
    _fields: FormData,
) -> PageResult {
    let season = path.key();
    let started = app::seasons::start_season(&app, request.actor()?, season).await;
    redirect_or_show_errors(
        started,
        |_| urls::season(season),
        async |errors| {
            let page = SeasonPage::load(app, request, season).await?;
            overview_page(&page, None, errors).await
        },
    )
    .await
}

async fn overview_page(
    page: &SeasonPage,
    typed: Option<&FormData>,
    errors: FormErrors,
) -> PageResult {
    let (context, t) = (&page.context, page.t());
    let mut current = Vec::new();
    for week in context.current_weeks() {
        let view = WeekPanel::new(context, week, t);
        current.push((view, load_scenario(page, &week.0).await?));
    }
    let joining = join_form(page, typed).await?;
    let policy = parse_policy(&context.season)?;
    let overview = SeasonOverviewPage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Overview),
        state: state_label(t, context.season.state),
        draft: context.season.state == SeasonState::Draft,
        ended: context.season.state == SeasonState::Ended,
        runs: context.can_run(),
        plays: context.own.is_some(),
        current,
        weeks: context
            .weeks
            .iter()
            .map(|week| WeekPanel::new(context, week, t))
            .collect(),
        players: context
            .players
            .iter()
            .map(|player| player_line(context, player))
            .collect(),
        rules: t.say_all(&policy.messages()),
        commitment: context.season.seed_commitment.as_deref().map(hex::encode),
        joining,
        errors,
    };
    render_page_with_status(overview.errors.status(), &overview)
}

fn player_line(context: &SeasonContext, player: &app::seasons::Player) -> PlayerLine {
    let joined = player.joined_week.number();
    PlayerLine {
        link: urls::player(context.season.key(), player.id),
        handle: player.handle.clone(),
        faction: faction_name(&player.faction),
        joined: (joined > 1).then_some(joined),
        left: player.left_after.is_some(),
    }
}

/// For members who do not play yet, while the season is not over.
async fn join_form(
    page: &SeasonPage,
    typed: Option<&FormData>,
) -> Result<Option<JoinForm>, Problem> {
    let SeasonPage { app, context, .. } = page;
    let (Some(actor), Some(_), None) = (page.viewer(), context.role, &context.own) else {
        return Ok(None);
    };
    let season = &context.season;
    let Some((week, _)) = context.current_weeks().first().copied() else {
        return Ok(None);
    };
    if season.state == SeasonState::Ended {
        return Ok(None);
    }
    let (club, id, number) = (season.club, season.catalogue, week.catalogue_number);
    let catalogue: CatalogueDocument =
        app::catalogues::find_catalogue_version(app, actor, club, id, number).await?;
    let factions = catalogue.factions.into_iter();
    let nights = week.nights.iter().map(|night| night.key.clone());
    let typed_nights = typed.map(|fields| fields.values("nights"));
    Ok(Some(JoinForm {
        factions: factions
            .map(|faction| {
                let is_chosen = typed.is_some_and(|it| it.text("faction") == faction.key);
                (faction.key, faction.name, is_chosen)
            })
            .collect(),
        nights: nights
            .map(|night| {
                let comes = typed_nights.as_ref().is_none_or(|it| it.contains(&night));
                (night, comes)
            })
            .collect(),
        handle: match typed {
            Some(fields) => fields.typed("handle").to_owned(),
            None => app::accounts::find_account(app, actor).await?.account.name,
        },
    }))
}
