//! Page: points that a referee gives or takes: a ledger line of its own with its reason, never an erasure.

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::results::AdjustPoints;
use app::{App, Refusal};
use askama::Template;
use league::ids::PlayerId;
use league::ledger::{LedgerLine, LineKind};
use league::season::{SeasonState, WeekPhase};
use serde::Deserialize;

use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::{FormErrors, redirect_or_show_errors};
use crate::pages::frame::form_reader::FormReader;
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page_with_status};
use crate::pages::frame::urls;
use crate::pages::season::context::{SeasonContext, SeasonHeader, SeasonTab};
use crate::pages::season::season_page::SignedInSeasonPage;
use crate::pages::words::roles::can_judge;
use crate::paths::SeasonPath;
use crate::query_parameters::Query;
use messages::Texts;

#[derive(Template)]
#[template(path = "points.html")]
struct PointsPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    running: bool,
    players: Vec<(String, String)>,
    weeks: Vec<u8>,
    form: PointsQuery,
    lines: Vec<GivenLine>,
    errors: FormErrors,
}
page_template!(PointsPage);

/// What stands in the form: typed, or filled in by a link from a line.
#[derive(Clone, Default, Deserialize)]
#[serde(default)]
pub struct PointsQuery {
    player: String,
    week: String,
    amount: String,
    reason: String,
}

struct GivenLine {
    player: String,
    id: String,
    week: u8,
    amount: i32,
    back: i32,
    why: String,
}

/// The form, and what was given and taken so far.
#[get("/clubs/{club}/seasons/{season}/points")]
pub async fn show_points(page: SignedInSeasonPage, query: Query<PointsQuery>) -> PageResult {
    points_page(&page, query.0, FormErrors::default()).await
}

#[post("/clubs/{club}/seasons/{season}/points")]
pub async fn adjust_points(
    app: Data<App>,
    request: PageRequest,
    path: Path<SeasonPath>,
    fields: FormData,
) -> PageResult {
    let season = path.key();
    let actor = request.actor()?;
    let done = match parse_form(&fields, request.t) {
        Ok(command) => app::results::adjust_points(&app, actor, season, command).await,
        Err(refusal) => Err(refusal),
    };
    let next = |_| format!("{}/points", urls::season(season));
    redirect_or_show_errors(done, next, async |errors| {
        let typed = |name: &str| fields.typed(name).to_owned();
        let form = PointsQuery {
            player: typed("player"),
            week: typed("week"),
            amount: typed("amount"),
            reason: typed("reason"),
        };
        let page = SignedInSeasonPage::load(app, request, season).await?;
        points_page(&page, form, errors).await
    })
    .await
}

fn parse_form(fields: &FormData, t: Texts) -> Result<AdjustPoints, Refusal> {
    let mut form = FormReader::new(fields);
    let command = AdjustPoints {
        key: None,
        player: PlayerId(form.id("player", &t.player())),
        week: form.week("week", &t.week()),
        // As many digits as the field takes; the use case says how many points are too many.
        amount: form.number("amount", &t.points_amount(), -9999..=9999),
        reason: form.text("reason"),
    };
    form.finish(command)
}

async fn points_page(
    page: &SignedInSeasonPage,
    form: PointsQuery,
    errors: FormErrors,
) -> PageResult {
    let (context, t) = (&page.context, page.t());
    if !can_judge(context.role) {
        return Err(Refusal::NotFound.into());
    }
    let found = app::standings::find_standings(&page.app, page.viewer(), page.key(), None).await?;
    let own = context.own.as_ref().map(|own| own.id);
    let others = context
        .players
        .iter()
        .filter(|player| Some(player.id) != own);
    let weeks = context.weeks.iter();
    let paired = weeks.filter(|(_, phase)| *phase >= WeekPhase::Paired);
    let ledger = found.standings.ledger.iter();
    let ruled = ledger.filter(|line| line.kind == LineKind::Ruling);
    let points = PointsPage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Results),
        running: context.season.state == SeasonState::Started,
        players: others
            .map(|player| (player.id.to_string(), player.handle.clone()))
            .collect(),
        weeks: paired.map(|(week, _)| week.week.number()).rev().collect(),
        lines: ruled.rev().map(|line| given(t, context, line)).collect(),
        form,
        errors,
    };
    render_page_with_status(points.errors.status(), &points)
}

fn given(t: Texts, context: &SeasonContext, line: &LedgerLine) -> GivenLine {
    let amount = line.amount.get();
    GivenLine {
        player: context.handle(line.player).to_owned(),
        id: line.player.to_string(),
        week: line.week.number(),
        amount,
        back: -amount,
        why: t.say(&line.reason.message()),
    }
}
