//! Page: the results desk for those who rule on results: whatever waits for somebody, the most urgent first.

use std::borrow::Cow;

use actix_web::get;
use app::Refusal;
use app::results::GameRow;
use askama::Template;
use league::painting::ClaimState;
use league::result::Slip;
use league::time::Instant;

use crate::pages::frame::page_request::Layout;
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::pages::rounds::pairings::{PairingRow, pairings};
use crate::pages::season::context::{SeasonContext, SeasonHeader, SeasonTab};
use crate::pages::season::season_page::SignedInSeasonPage;
use crate::pages::words::local_time::LocalTime;
use crate::pages::words::roles::can_judge;
use messages::Texts;

#[derive(Template)]
#[template(path = "results_desk.html")]
struct ResultsDeskPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    heaps: Vec<WaitingGroup>,
    claims: usize,
    runs: bool,
}
page_template!(ResultsDeskPage);

/// Games that wait for the same thing.
struct WaitingGroup {
    key: &'static str,
    title: Cow<'static, str>,
    text: Cow<'static, str>,
    games: Vec<WaitingGame>,
    urgent: bool,
}

struct WaitingGame {
    week: u8,
    game: PairingRow,
    since: Option<LocalTime>,
}

/// What a game waits for, the most urgent first.
#[derive(Clone, Copy, PartialEq, Eq)]
enum WaitReason {
    Ruling,
    Overdue,
    Report,
    Answer,
}

#[get("/clubs/{club}/seasons/{season}/results")]
pub async fn show_results_desk(page: SignedInSeasonPage) -> PageResult {
    let (app, context, t) = (&page.app, &page.context, page.t());
    let (season, viewer) = (page.key(), page.viewer());
    if !can_judge(context.role) {
        return Err(Refusal::NotFound.into());
    }
    let games = app::results::list_games(app, viewer, season, None).await?;
    let claims = app::painting::list_claims(app, viewer, season, None).await?;
    let now = app.now().await?;
    let heap = |key, waits, title, text| WaitingGroup {
        key,
        title,
        text,
        games: waiting(context, t, &games, now, waits),
        urgent: matches!(waits, WaitReason::Ruling | WaitReason::Overdue),
    };
    let heaps = [
        heap(
            "ruling",
            WaitReason::Ruling,
            t.disputed(),
            t.disputed_text(),
        ),
        heap(
            "overdue",
            WaitReason::Overdue,
            t.overdue(),
            t.overdue_text(),
        ),
        heap(
            "report",
            WaitReason::Report,
            t.unreported(),
            t.unreported_text(),
        ),
        heap(
            "answer",
            WaitReason::Answer,
            t.unanswered(),
            t.unanswered_text(),
        ),
    ];
    render_page(&ResultsDeskPage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Results),
        heaps: heaps
            .into_iter()
            .filter(|heap| !heap.games.is_empty())
            .collect(),
        claims: claims
            .iter()
            .filter(|claim| matches!(claim.state, ClaimState::Open))
            .count(),
        runs: context.can_run(),
    })
}

fn waiting(
    context: &SeasonContext,
    t: Texts,
    games: &[GameRow],
    now: Instant,
    waits: WaitReason,
) -> Vec<WaitingGame> {
    let times = context.times(t);
    let fitting = games
        .iter()
        .filter(|game| wait_reason(context, game, now) == Some(waits));
    let mut found: Vec<WaitingGame> = fitting
        .filter_map(|game| {
            Some(WaitingGame {
                week: game.week.number(),
                game: pairings(context, t, std::slice::from_ref(game)).pop()?,
                since: match &game.slip {
                    Slip::Disputed { dispute, .. } => Some(times.short(dispute.at)),
                    Slip::Reported { confirm_due, .. } => Some(times.short(*confirm_due)),
                    _ => {
                        let week = context.week(game.week).ok();
                        week.map(|(week, _)| times.short(week.facts.play_until_at))
                    }
                },
            })
        })
        .collect();
    found.sort_by(|one, other| {
        let key = |row: &WaitingGame| (row.week, row.game.night.clone(), row.game.table);
        key(one).cmp(&key(other))
    });
    found
}

fn wait_reason(context: &SeasonContext, game: &GameRow, now: Instant) -> Option<WaitReason> {
    game.meeting.as_ref()?;
    match &game.slip {
        Slip::Disputed { .. } => Some(WaitReason::Ruling),
        Slip::Reported { .. } => Some(WaitReason::Answer),
        Slip::Awaited => {
            let (week, _) = context.week(game.week).ok()?;
            let over = now >= week.facts.play_until_at;
            Some(if over {
                WaitReason::Overdue
            } else {
                WaitReason::Report
            })
        }
        Slip::Confirmed { .. } | Slip::Ruled(_) => None,
    }
}
