//! Page: ending a season, and afterwards its prizes and the revealed seed of its draws.

use std::borrow::Cow;

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::standings::SeasonAwards;
use app::{App, Refusal};
use askama::Template;
use league::season::{SeasonState, WeekPhase};
use league::standings::PrizeAward;

use super::context::{SeasonContext, SeasonHeader, SeasonTab};
use super::season_page::SeasonPage;
use super::statistics::prize_text;
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::{FormErrors, redirect_or_show_errors};
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page_with_status};
use crate::pages::frame::urls;
use crate::pages::words::local_time::LocalTime;
use crate::paths::SeasonPath;
use messages::Texts;

#[derive(Template)]
#[template(path = "ending.html")]
struct EndingPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    ended_at: Option<LocalTime>,
    runs: bool,
    running: bool,
    open_weeks: Vec<(u8, String, Cow<'static, str>)>,
    places: Vec<(u32, String, i32)>,
    prizes: Vec<PrizeRow>,
    commitment: String,
    seed: Option<String>,
    errors: FormErrors,
}
page_template!(EndingPage);

struct PrizeRow {
    title: Cow<'static, str>,
    holders: String,
    value: String,
}

/// Places of the table that are named.
const PLACES: usize = 3;

/// What ending will do, or what it did.
#[get("/clubs/{club}/seasons/{season}/end")]
pub async fn show_ending(page: SeasonPage) -> PageResult {
    ending_page(&page, FormErrors::default()).await
}

#[post("/clubs/{club}/seasons/{season}/end")]
pub async fn end_season(
    app: Data<App>,
    request: PageRequest,
    path: Path<SeasonPath>,
    _fields: FormData,
) -> PageResult {
    let season = path.key();
    let ended = app::seasons::end_season(&app, request.actor()?, season).await;
    let next = |_| format!("{}/end", urls::season(season));
    redirect_or_show_errors(ended, next, async |errors| {
        ending_page(&SeasonPage::load(app, request, season).await?, errors).await
    })
    .await
}

async fn ending_page(page: &SeasonPage, errors: FormErrors) -> PageResult {
    let SeasonPage { app, context, .. } = page;
    let (season, viewer, t) = (page.key(), page.viewer(), page.t());
    let ended = context.season.state == SeasonState::Ended;
    if !ended && !context.can_run() {
        return Err(Refusal::NotFound.into());
    }
    let found = app::standings::find_standings(app, viewer, season, None).await?;
    let awards = app::standings::list_awards(app, viewer, season).await?;
    let export = app::seasons::export_season(app, viewer, season).await?;
    let open = context
        .weeks
        .iter()
        .filter(|(_, phase)| *phase < WeekPhase::Closed);
    let rows = found.standings.rows.iter();
    let ending = EndingPage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Ending),
        ended_at: context
            .season
            .ended_at
            .map(|at| context.times(t).date_time(at)),
        runs: context.can_run(),
        running: context.season.state == SeasonState::Started,
        open_weeks: open
            .map(|(week, phase)| {
                let pairing = format!("{}/pairing", context.week_link(week.week));
                (
                    week.week.number(),
                    pairing,
                    crate::pages::week::panel::phase_label(t, *phase),
                )
            })
            .collect(),
        places: rows
            .take_while(|row| row.rank as usize <= PLACES)
            .map(|row| {
                (
                    row.rank,
                    context.handle(row.player).to_owned(),
                    row.total.get(),
                )
            })
            .collect(),
        prizes: prizes(context, t, &awards),
        // A draft has promised nothing yet.
        commitment: export.seed_commitment.unwrap_or_default(),
        seed: export.seed,
        errors,
    };
    render_page_with_status(ending.errors.status(), &ending)
}

fn prizes(context: &SeasonContext, t: Texts, awards: &SeasonAwards) -> Vec<PrizeRow> {
    let row = |award: &PrizeAward| {
        let holders = award.holders.iter().map(|player| context.handle(*player));
        let (title, value) = prize_text(t, award);
        PrizeRow {
            title,
            holders: holders.collect::<Vec<_>>().join(", "),
            value,
        }
    };
    awards.awards.iter().map(row).collect()
}
