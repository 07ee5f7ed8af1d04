//! A player's page: place, army, games, and the ledger behind the total.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::Desk;
use app::lists::ArmyWeek;
use askama::Template;
use league::ids::{ClubId, PlayerId, SeasonId};
use league::ledger::{Kind, Line, Reason};
use league::season::SeasonState;
use league::standings::{Row, TieBreak};
use league::week::WeekNo;
use serde::Deserialize;
use uuid::Uuid;

use super::address;
use super::answer::{PageAnswer, framed, show};
use super::army::ArmyPicture;
use super::factions::faction_name;
use super::figure::{fraction, number};
use super::games::of_player;
use super::opponents::{MetRow, meaning, met};
use super::pairings::PairingRow;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::{Phrase, Texts};
use super::visit::{Frame, Visit};

#[derive(Template)]
#[template(path = "player.html")]
struct PlayerPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    link: String,
    ended: bool,
    /// Where the player says who may read their record, for themselves.
    record: Option<String>,
    handle: String,
    faction: String,
    place: Option<PlacePanel>,
    army: Option<ArmyPicture>,
    games: Vec<(u8, PairingRow)>,
    met: Vec<MetRow>,
    lines: Vec<LedgerRow>,
}
framed!(PlayerPage);

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
    name: &'static str,
    value: String,
    meaning: Phrase,
}

struct LedgerRow {
    week: u8,
    kind: Phrase,
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

/// A player's address.
#[derive(Clone, Copy, Deserialize)]
pub struct InPlayer {
    club: Uuid,
    season: Uuid,
    player: Uuid,
}

impl InPlayer {
    /// Club, season and player.
    pub fn ids(self) -> (ClubId, SeasonId, PlayerId) {
        let Self {
            club,
            season,
            player,
        } = self;
        (ClubId(club), SeasonId(season), PlayerId(player))
    }
}

/// A player's page.
#[get("/clubs/{club}/seasons/{season}/players/{player}")]
pub async fn show_player(desk: Data<Desk>, visit: Visit, path: Path<InPlayer>) -> PageAnswer {
    let (club, season, player) = path.ids();
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let found = app::standings::find_standings(&desk, visit.viewer, club, season, None).await?;
    let standings = found.standings;
    let row = standings.row_of(player);
    let army = app::lists::find_army(&desk, visit.viewer, club, season, player).await?;
    let lines = standings.ledger.iter();
    let who = scene.players.iter().find(|known| known.id == player);
    let own = scene.own.as_ref().is_some_and(|own| own.id == player);
    let page = PlayerPage {
        frame: visit.frame(),
        t: visit.t,
        head: scene.head(&visit, Tab::Standings),
        link: address::player(club, season, player),
        ended: scene.season.state == SeasonState::Ended,
        record: own.then(|| address::record_consent(club)),
        handle: scene.handle(player).to_owned(),
        faction: who
            .map(|who| faction_name(&who.faction))
            .unwrap_or_default(),
        place: row.map(|row| PlacePanel {
            rank: row.rank,
            of: standings.rows.len(),
            total: row.total.get(),
            record: record(row),
            tie_breaks: tie_breaks(visit.t, row),
        }),
        army: ArmyPicture::new(&army),
        met: met(&desk, &visit, &scene, &standings, player).await?,
        games: of_player(&desk, &visit, &scene, player).await?,
        lines: lines
            .filter(|line| line.player == player)
            .map(|line| ledger_row(visit.t, line, &army))
            .collect(),
    };
    show(&page)
}

/// Games won, drawn and lost.
pub fn record(row: &Row) -> String {
    let record = row.record;
    format!("{}–{}–{}", record.won, record.drawn, record.lost)
}

fn tie_breaks(t: &Texts, row: &Row) -> Vec<TieRow> {
    let values = row.tie_breaks.iter().map(|value| {
        let exact = value.value.map(|exact| match value.tie_break {
            TieBreak::PaintedShare => t.figures.percent.with(number(t, exact * 100)),
            _ => number(t, exact),
        });
        TieRow {
            name: t.speech().tie_break(value.tie_break),
            value: exact.unwrap_or_else(|| "–".to_owned()),
            meaning: meaning(t, value.tie_break),
        }
    });
    values.collect()
}

fn ledger_row(t: &Texts, line: &Line, army: &[ArmyWeek]) -> LedgerRow {
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
        why: t.speech().credited(&line.reason),
        version: line.version,
        paint: match line.reason {
            Reason::PaintedShare(_) => paint(t, army, line.week),
            _ => Vec::new(),
        },
    }
}

fn paint(t: &Texts, army: &[ArmyWeek], week: WeekNo) -> Vec<PaintRow> {
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
