//! Page: a player: place, army, games, and the ledger behind the total.

use std::borrow::Cow;

use actix_web::get;
use actix_web::web::Path;
use app::lists::ArmyWeek;
use askama::Template;
use league::ledger::{LedgerLine, LineKind, LineReason};
use league::season::SeasonState;
use league::standings::{Row, TieBreak};
use league::week::WeekNo;

use super::context::{SeasonHeader, SeasonTab};
use super::opponents::{OpponentRow, opponents_met};
use super::season_page::SeasonPage;
use crate::pages::frame::page_request::Layout;
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::pages::frame::urls;
use crate::pages::pictures::army_chart::ArmyChart;
use crate::pages::results::game::games_of_player;
use crate::pages::rounds::pairings::PairingRow;
use crate::pages::words::numbers::{fraction, number};
use crate::paths::PlayerPath;
use messages::Texts;

#[derive(Template)]
#[template(path = "player.html")]
struct PlayerPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    link: String,
    ended: bool,
    /// Where the player says who may read their record, for themselves.
    record: Option<String>,
    handle: String,
    faction: String,
    place: Option<PlacePanel>,
    army: Option<ArmyChart>,
    games: Vec<(u8, PairingRow)>,
    met: Vec<OpponentRow>,
    lines: Vec<LedgerRow>,
}
page_template!(PlayerPage);

/// Where the player stands; nowhere before the first week.
struct PlacePanel {
    rank: u32,
    of: usize,
    total: i32,
    record: String,
    tie_breaks: Vec<TieRow>,
}

/// One tie-break with how it is counted.
struct TieRow {
    name: String,
    value: String,
    counting: String,
}

struct LedgerRow {
    week: u8,
    kind: Cow<'static, str>,
    amount: i32,
    why: String,
    version: u32,
    /// What a painted share is made of; empty for any other reason.
    paint: Vec<PaintRow>,
}

/// An entry of the week's list with its paint.
struct PaintRow {
    unit: String,
    painted: u32,
    models: u32,
    counted: String,
    points: u32,
}

#[get("/clubs/{club}/seasons/{season}/players/{player}")]
pub async fn show_player(page: SeasonPage, path: Path<PlayerPath>) -> PageResult {
    let (season, player) = path.ids();
    let SeasonPage { app, context, .. } = &page;
    let (viewer, t) = (page.viewer(), page.t());
    let found = app::standings::find_standings(app, viewer, season, None).await?;
    let standings = found.standings;
    let row = standings.row_of(player);
    let army = app::lists::find_army(app, viewer, season, player).await?;
    let lines = standings.ledger.iter();
    let own = context.own.as_ref().is_some_and(|own| own.id == player);
    render_page(&PlayerPage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Standings),
        link: urls::player(season, player),
        ended: context.season.state == SeasonState::Ended,
        record: own.then(|| urls::record_consent(season.club)),
        handle: context.handle(player).to_owned(),
        faction: context.faction(player),
        place: row.map(|row| PlacePanel {
            rank: row.rank,
            of: standings.rows.len(),
            total: row.total.get(),
            record: record(row),
            tie_breaks: tie_breaks(t, row),
        }),
        army: ArmyChart::new(&army),
        met: opponents_met(&page, &standings, player).await?,
        games: games_of_player(&page, player).await?,
        lines: lines
            .filter(|line| line.player == player)
            .map(|line| ledger_row(t, line, &army))
            .collect(),
    })
}

/// Games won, drawn and lost.
pub fn record(row: &Row) -> String {
    let record = row.record;
    format!("{}–{}–{}", record.won, record.drawn, record.lost)
}

fn tie_breaks(t: Texts, row: &Row) -> Vec<TieRow> {
    let values = row.tie_breaks.iter().map(|value| {
        let exact = value.value.map(|exact| match value.tie_break {
            TieBreak::PaintedShare => t.percent(number(t, exact * 100)),
            _ => number(t, exact),
        });
        TieRow {
            name: t.say(&value.tie_break.message()),
            value: exact.unwrap_or_else(|| "–".to_owned()),
            counting: t.say(&value.tie_break.counting()),
        }
    });
    values.collect()
}

fn ledger_row(t: Texts, line: &LedgerLine, army: &[ArmyWeek]) -> LedgerRow {
    let kind = match line.kind {
        LineKind::Game => t.line_game(),
        LineKind::Bye => t.line_bye(),
        LineKind::Absence => t.line_absence(),
        LineKind::Attendance => t.line_attendance(),
        LineKind::Painting => t.line_painting(),
        LineKind::BonusCap => t.line_bonus_cap(),
        LineKind::LateList => t.line_late_list(),
        LineKind::CatchUp => t.line_catch_up(),
        LineKind::Ruling => t.line_ruling(),
        LineKind::DroppedWeek => t.line_dropped(),
    };
    LedgerRow {
        week: line.week.number(),
        kind,
        amount: line.amount.get(),
        why: t.say(&line.reason.message()),
        version: line.version,
        paint: match line.reason {
            LineReason::PaintedShare(_) => paint(t, army, line.week),
            _ => Vec::new(),
        },
    }
}

fn paint(t: Texts, army: &[ArmyWeek], week: WeekNo) -> Vec<PaintRow> {
    let of_week = army.iter().find(|known| known.week == week);
    let entries = of_week.and_then(|week| week.fielded.as_ref());
    let entries = entries.into_iter().flat_map(|list| &list.entries);
    let rows = entries.map(|entry| {
        let (on_list, counted) = (entry.painted.on_list, entry.painted.counted);
        PaintRow {
            unit: entry.name.clone(),
            painted: on_list.painted,
            models: on_list.models,
            counted: fraction(t, *counted.numer(), *counted.denom()),
            points: on_list.points.get(),
        }
    });
    rows.collect()
}
