//! Page: a game and its result slip, to be reported, confirmed, disputed or ruled.

use std::borrow::Cow;

use actix_web::web::{Data, Path};
use actix_web::{get, post};
use app::results::{DisputeResult, GameRow, ReportResult, RuleResult};
use app::seasons::VisibleScenario;
use app::{Actor, App, Reason, Refusal, Viewer};
use askama::Template;
use league::ids::PlayerId;
use league::keys::{GameKey, SeasonKey};
use league::result::{Confirmation, ItemScore, Outcome, Slip};
use league::scenario::ScenarioSheet;
use league::side::Side;
use messages::results;

use super::slip_form::{self, CountRow, EndingChoice};
use crate::pages::frame::csrf;
use crate::pages::frame::form_data::FormData;
use crate::pages::frame::form_errors::{FormErrors, redirect_or_show_errors};
use crate::pages::frame::form_reader::{FormReader, broken_form};
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::pages::frame::response::{PageResult, page_template, render_page_with_status};
use crate::pages::frame::urls;
use crate::pages::rounds::pairings::{PairingRow, outcome_text, pairing, pairings};
use crate::pages::season::context::{SeasonContext, SeasonHeader, SeasonTab};
use crate::pages::season::season_page::SeasonPage;
use crate::pages::words::local_time::LocalTime;
use crate::pages::words::roles::can_judge;
use crate::paths::GamePath;
use crate::problem::Problem;
use messages::Texts;

#[derive(Template)]
#[template(path = "game.html")]
struct GamePage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    week: u8,
    week_link: String,
    game: PairingRow,
    link: String,
    slip_events: Vec<SlipEventRow>,
    legs: Vec<Vec<CountRow>>,
    may_report: bool,
    may_answer: bool,
    may_rule: bool,
    confirm_due: Option<LocalTime>,
    seen: String,
    key: String,
    reason: String,
    endings: Vec<EndingChoice>,
    disputed: bool,
    errors: FormErrors,
}
page_template!(GamePage);

/// One thing that was said about a game.
struct SlipEventRow {
    what: Cow<'static, str>,
    by: String,
    outcome: String,
    legs: Vec<Vec<CountedRow>>,
    reason: String,
    at: LocalTime,
}

/// What a report counted of one item.
struct CountedRow {
    label: String,
    counts: [String; 2],
}

#[get("/clubs/{club}/seasons/{season}/games/{game}")]
pub async fn show_game(page: SeasonPage, path: Path<GamePath>) -> PageResult {
    let nothing = FormData::default();
    game_page(&page, path.key(), &nothing, FormErrors::default()).await
}

/// Reports, confirms, disputes or rules.
#[post("/clubs/{club}/seasons/{season}/games/{game}")]
pub async fn answer_slip(
    app: Data<App>,
    request: PageRequest,
    path: Path<GamePath>,
    fields: FormData,
) -> PageResult {
    let game = path.key();
    let done = submit(&app, &request, game, &fields).await;
    redirect_or_show_errors(
        done,
        |()| urls::game(game),
        async |errors| {
            let page = SeasonPage::load(app, request, game.season).await?;
            game_page(&page, game, &fields, errors).await
        },
    )
    .await
}

async fn submit(
    app: &App,
    request: &PageRequest,
    key: GameKey,
    fields: &FormData,
) -> Result<(), Refusal> {
    let actor: Actor = request.viewer.ok_or(Refusal::SignInNeeded)?;
    let reason = fields.text("reason").to_owned();
    match fields.text("act") {
        "confirm" => {
            let mut form = FormReader::new(fields);
            let seen = form.hidden("seen");
            let seen = form.finish(seen)?;
            app::results::confirm_result(app, actor, key, seen).await?;
        }
        "dispute" => {
            let command = DisputeResult {
                reason,
                counter: None,
            };
            app::results::dispute_result(app, actor, key, command).await?;
        }
        what @ ("report" | "rule") => {
            let game = app::results::find_game(app, request.viewer, key).await?;
            let sheet = load_sheet(app, request.viewer, key.season, &game).await?;
            let sheet = sheet.ok_or_else(|| {
                Refusal::rule(Reason::WeekState, results::scenario_not_revealed())
            })?;
            let names = names(app, request, key.season, &game).await?;
            let names = names.each_ref().map(String::as_str);
            let typed = slip_form::parse_result(&sheet, fields, request.t, names)?;
            if what == "rule" {
                let command = RuleResult { typed, reason };
                app::results::rule_result(app, actor, key, command).await?;
            } else {
                let command = ReportResult {
                    key: fields.text("key").to_owned(),
                    typed,
                };
                app::results::report_result(app, actor, key, command).await?;
            }
        }
        _ => return Err(broken_form()),
    }
    Ok(())
}

/// Both players of a game, as the labels of its form name them.
async fn names(
    app: &App,
    request: &PageRequest,
    season: SeasonKey,
    game: &GameRow,
) -> Result<[String; 2], Refusal> {
    let players = app::seasons::list_players(app, request.viewer, season).await?;
    let second = game.meeting.as_ref().map(|meeting| meeting.second);
    Ok([Some(game.first), second].map(|side| {
        let mut players = players.iter();
        let player = players.find(|player| Some(player.id) == side);
        player.map_or_else(String::new, |player| player.handle.clone())
    }))
}

/// The sheet of the game's week, if the viewer may see it.
async fn load_sheet(
    app: &App,
    viewer: Viewer,
    season: SeasonKey,
    game: &GameRow,
) -> Result<Option<ScenarioSheet>, Refusal> {
    let seen = app::seasons::find_scenario(app, viewer, season.week(game.week)).await;
    match seen {
        Ok(VisibleScenario::Full(sheet)) => ScenarioSheet::try_from(*sheet)
            .map(Some)
            .map_err(|faults| Refusal::Internal(format!("a sheet that was kept: {faults:?}"))),
        Ok(VisibleScenario::Title(_)) | Err(Refusal::NotFound) => Ok(None),
        Err(other) => Err(other),
    }
}

async fn game_page(
    page: &SeasonPage,
    key: GameKey,
    fields: &FormData,
    errors: FormErrors,
) -> PageResult {
    let SeasonPage { app, context, .. } = page;
    let (viewer, t) = (page.viewer(), page.t());
    let game = app::results::find_game(app, viewer, key).await?;
    let sheet = load_sheet(app, viewer, key.season, &game).await?;
    let side = own_side(context, &game);
    let row = pairing(context, t, &game);
    let names = [
        row.first.as_str(),
        // A bye has no other player.
        row.second.as_deref().unwrap_or_default(),
    ];
    let shown = GamePage {
        endings: slip_form::endings(t, names, fields),
        disputed: matches!(game.slip, Slip::Disputed { .. }),
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Week),
        week: game.week.number(),
        week_link: context.week_link(game.week),
        game: row,
        link: urls::game(key),
        slip_events: slip_events(context, t, &game, sheet.as_ref()),
        legs: sheet.map_or_else(Vec::new, |sheet| slip_form::legs(&sheet, fields, &errors)),
        may_report: side.is_some() && can_be_reported(&game.slip),
        may_answer: side.is_some_and(|side| can_answer(&game.slip, side)),
        may_rule: side.is_none() && can_judge(context.role),
        confirm_due: match &game.slip {
            Slip::Reported { confirm_due, .. } => Some(context.times(t).countdown(*confirm_due)),
            _ => None,
        },
        seen: match &game.slip {
            Slip::Reported { report, .. } => report.at.to_rfc3339(),
            _ => String::new(),
        },
        key: match fields.raw("key") {
            Some(key) => key.to_owned(),
            // Without randomness there is no key, and the report is refused for that.
            None => csrf::new_secret().unwrap_or_default(),
        },
        reason: fields.typed("reason").to_owned(),
        errors,
    };
    render_page_with_status(shown.errors.status(), &shown)
}

fn own_side(context: &SeasonContext, game: &GameRow) -> Option<Side> {
    let own = context.own.as_ref()?.id;
    let second = game.meeting.as_ref()?.second;
    if own == game.first {
        Some(Side::First)
    } else {
        (own == second).then_some(Side::Second)
    }
}

/// Whether a report may still decide: a dispute is for a referee.
fn can_be_reported(slip: &Slip) -> bool {
    matches!(slip, Slip::Awaited | Slip::Reported { .. })
}

/// Whether the other side has reported and waits for this one.
fn can_answer(slip: &Slip, side: Side) -> bool {
    matches!(slip, Slip::Reported { report, .. } if report.by != side)
}

/// Everything that was said, first things first.
fn slip_events(
    context: &SeasonContext,
    t: Texts,
    game: &GameRow,
    sheet: Option<&ScenarioSheet>,
) -> Vec<SlipEventRow> {
    let times = context.times(t);
    let name = |side: Side| match (side, game.meeting.as_ref()) {
        (Side::Second, Some(meeting)) => context.handle(meeting.second).to_owned(),
        _ => context.handle(game.first).to_owned(),
    };
    let reported = |report: &league::result::ResultReport| SlipEventRow {
        what: t.slip_reported(),
        by: name(report.by),
        outcome: outcome_text(t, &report.outcome),
        legs: counted_rows(sheet, &report.outcome),
        reason: String::new(),
        at: times.date_time(report.at),
    };
    match &game.slip {
        Slip::Awaited => Vec::new(),
        Slip::Reported { report, .. } => vec![reported(report)],
        Slip::Disputed { report, dispute } => {
            let counter = dispute.counter.as_ref();
            let disputed = SlipEventRow {
                what: t.slip_disputed(),
                by: name(dispute.by),
                outcome: counter
                    .map(|counter| outcome_text(t, &counter.outcome))
                    .unwrap_or_default(),
                legs: counter
                    .map(|counter| counted_rows(sheet, &counter.outcome))
                    .unwrap_or_default(),
                reason: dispute
                    .reason
                    .as_ref()
                    .map(|text| text.as_str().to_owned())
                    .unwrap_or_default(),
                at: times.date_time(dispute.at),
            };
            vec![reported(report), disputed]
        }
        Slip::Confirmed { report, how, at } => {
            let confirmed = SlipEventRow {
                what: t.slip_confirmed(),
                by: match how {
                    Confirmation::ByOpponent => name(report.by.other()),
                    Confirmation::BySilence => t.by_silence().into_owned(),
                },
                outcome: String::new(),
                legs: Vec::new(),
                reason: String::new(),
                at: times.date_time(*at),
            };
            vec![reported(report), confirmed]
        }
        Slip::Ruled(ruling) => vec![SlipEventRow {
            what: t.slip_ruled(),
            by: t.by_referee().into_owned(),
            outcome: outcome_text(t, &ruling.outcome),
            legs: counted_rows(sheet, &ruling.outcome),
            reason: ruling.reason.as_str().to_owned(),
            at: times.date_time(ruling.at),
        }],
    }
}

/// What was counted, leg by leg; an item of which nothing was typed is left out.
fn counted_rows(sheet: Option<&ScenarioSheet>, outcome: &Outcome) -> Vec<Vec<CountedRow>> {
    let (Some(sheet), Outcome::Played(score)) = (sheet, outcome) else {
        return Vec::new();
    };
    let items = sheet.terms().items.as_slice();
    let row = |item: &ItemScore| {
        let known = items.iter().find(|known| known.key == item.item)?;
        let counts = Side::BOTH.map(|side| item.counts[side]);
        let typed = counts.iter().any(Option::is_some);
        let word = |count: Option<u32>| count.map_or_else(|| "–".to_owned(), |it| it.to_string());
        typed.then(|| CountedRow {
            label: known.label.to_string(),
            counts: counts.map(word),
        })
    };
    let legs = score.legs.iter();
    legs.map(|leg| leg.items.iter().filter_map(row).collect())
        .collect()
}

/// Every game of a week.
///
/// # Errors
/// When the server cannot tell.
pub async fn games_of_week(
    page: &SeasonPage,
    week: league::week::WeekNo,
) -> Result<Vec<PairingRow>, Problem> {
    let (viewer, season) = (page.viewer(), page.key());
    let games = app::results::list_games(&page.app, viewer, season, Some(week)).await?;
    Ok(pairings(&page.context, page.t(), &games))
}

/// The week and row of every game of one player.
///
/// # Errors
/// When the server cannot tell.
pub async fn games_of_player(
    page: &SeasonPage,
    player: PlayerId,
) -> Result<Vec<(u8, PairingRow)>, Problem> {
    let (viewer, season) = (page.viewer(), page.key());
    let mut games = app::results::list_games(&page.app, viewer, season, None).await?;
    games.retain(|game| game.involves(player));
    games.sort_by_key(|game| game.week);
    let row = |game: &GameRow| (game.week.number(), pairing(&page.context, page.t(), game));
    Ok(games.iter().map(row).collect())
}
