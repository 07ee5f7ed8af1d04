//! The standings of a season, and the ledger behind each number.

use actix_web::get;
use actix_web::web::{Data, Path, Query};
use app::Desk;
use askama::Template;
use league::ids::{ClubId, PlayerId, SeasonId};
use league::ledger::{Kind, Line};
use league::standings::Row;
use league::week::WeekNo;
use serde::Deserialize;
use uuid::Uuid;

use super::address::InSeason;
use super::answer::{PageAnswer, framed, show};
use super::chart::RankChart;
use super::factions::faction_name;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::{Phrase, Texts};
use super::visit::{Frame, Visit};

#[derive(Template)]
#[template(path = "standings.html")]
struct StandingsPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    as_of: u8,
    rows: Vec<StandingsRow>,
    weeks: Vec<u8>,
    chart: Option<RankChart>,
    wall: bool,
}
framed!(StandingsPage);

#[derive(Template)]
#[template(path = "ledger.html")]
struct LedgerPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    handle: String,
    faction: String,
    rank: u32,
    total: i32,
    tie_breaks: Vec<(&'static str, String)>,
    lines: Vec<LedgerRow>,
}
framed!(LedgerPage);

struct StandingsRow {
    rank: u32,
    shared: bool,
    movement: Option<i32>,
    link: String,
    handle: String,
    faction: String,
    mine: bool,
    active: bool,
    record: String,
    games: i32,
    painting: i32,
    other: i32,
    total: i32,
    decided_by: Option<&'static str>,
}

struct LedgerRow {
    week: u8,
    kind: Phrase,
    amount: i32,
    why: String,
    version: u32,
}

/// As of which week.
#[derive(Deserialize)]
pub struct AsOf {
    week: Option<u8>,
    #[serde(default)]
    wall: bool,
}

/// A player's address.
#[derive(Clone, Copy, Deserialize)]
pub struct InPlayer {
    club: Uuid,
    season: Uuid,
    player: Uuid,
}

/// The standings.
#[get("/clubs/{club}/seasons/{season}/standings")]
pub async fn show_standings(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InSeason>,
    query: Query<AsOf>,
) -> PageAnswer {
    let (club, season) = path.ids();
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let week = query.week.and_then(WeekNo::new);
    let found = app::standings::find_standings(&desk, visit.viewer, club, season, week).await?;
    let standings = found.standings;
    let own = scene.own.as_ref().map(|own| own.id);
    let as_of = standings.as_of;
    let ranks = app::standings::find_rank_history(&desk, visit.viewer, club, season, as_of).await?;
    let page = StandingsPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(&visit, Tab::Standings),
        as_of: standings.as_of.number(),
        rows: standings
            .rows
            .iter()
            .map(|row| row_of(&scene, row))
            .collect(),
        weeks: (1..=standings.as_of.number()).collect(),
        chart: RankChart::new(ranks, own, |player| scene.handle(player).to_owned()),
        wall: query.wall,
    };
    show(&page)
}

/// The ledger of one player.
#[get("/clubs/{club}/seasons/{season}/players/{player}")]
pub async fn show_ledger(desk: Data<Desk>, visit: Visit, path: Path<InPlayer>) -> PageAnswer {
    let InPlayer {
        club,
        season,
        player,
    } = path.into_inner();
    let (club, season, player) = (ClubId(club), SeasonId(season), PlayerId(player));
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let found = app::standings::find_standings(&desk, visit.viewer, club, season, None).await?;
    let row = found
        .standings
        .row_of(player)
        .ok_or(app::Refusal::NotFound)?;
    let lines = found.standings.ledger.iter();
    let who = scene.players.iter().find(|known| known.id == player);
    let page = LedgerPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(&visit, Tab::Standings),
        handle: scene.handle(player).to_owned(),
        faction: who
            .map(|who| faction_name(&who.faction))
            .unwrap_or_default(),
        rank: row.rank,
        total: row.total.get(),
        tie_breaks: tie_breaks(row),
        lines: lines
            .filter(|line| line.player == player)
            .map(|line| ledger_row(visit.t, line))
            .collect(),
    };
    show(&page)
}

fn row_of(scene: &SeasonScene, row: &Row) -> StandingsRow {
    let who = scene.players.iter().find(|player| player.id == row.player);
    let (games, painting) = (
        row.sums.of(Kind::Game) + row.sums.of(Kind::Bye),
        row.sums.of(Kind::Painting),
    );
    let record = row.record;
    StandingsRow {
        rank: row.rank,
        shared: row.shared,
        movement: row.movement.filter(|places| *places != 0),
        link: format!("{}/players/{}", scene.link(), row.player),
        handle: scene.handle(row.player).to_owned(),
        faction: who
            .map(|who| faction_name(&who.faction))
            .unwrap_or_default(),
        mine: scene.own.as_ref().is_some_and(|own| own.id == row.player),
        active: row.active,
        record: format!("{}–{}–{}", record.won, record.drawn, record.lost),
        games: games.get(),
        painting: painting.get(),
        other: (row.total - games - painting).get(),
        total: row.total.get(),
        decided_by: row.decided_by.map(|tie_break| tie_break.words()),
    }
}

fn tie_breaks(row: &Row) -> Vec<(&'static str, String)> {
    let values = row.tie_breaks.iter().map(|value| {
        let number = value.value.map(|exact| exact.to_string());
        (
            value.tie_break.words(),
            number.unwrap_or_else(|| "–".to_owned()),
        )
    });
    values.collect()
}

fn ledger_row(t: &Texts, line: &Line) -> LedgerRow {
    let kind = match line.kind {
        Kind::Game => t.line_game,
        Kind::Bye => t.line_bye,
        Kind::Absence => t.line_absence,
        Kind::Attendance => t.line_attendance,
        Kind::Painting => t.line_painting,
        Kind::BonusCap => t.line_bonus_cap,
        Kind::LateList => t.line_late_list,
        Kind::CatchUp => t.line_catch_up,
        Kind::Ruling => t.line_ruling,
        Kind::DroppedWeek => t.line_dropped,
    };
    LedgerRow {
        week: line.week.number(),
        kind,
        amount: line.amount.get(),
        why: line.reason.to_string(),
        version: line.version,
    }
}
