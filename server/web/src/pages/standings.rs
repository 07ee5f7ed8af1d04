//! The standings of a season.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::Desk;
use askama::Template;
use league::ledger::Kind;
use league::standings::Row;
use league::week::WeekNo;
use serde::Deserialize;

use super::address::{self, InSeason};
use super::answer::{PageAnswer, framed, show};
use super::chart::RankChart;
use super::factions::faction_name;
use super::players::record;
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::Texts;
use super::visit::{Frame, Visit};
use crate::query::Query;

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
}
framed!(StandingsPage);

/// A row of the table.
pub struct StandingsRow {
    /// Place from 1.
    pub rank: u32,
    /// Whether others have the same.
    pub shared: bool,
    /// Places gained, unless none.
    pub movement: Option<i32>,
    /// The player's page.
    pub link: String,
    /// The player.
    pub handle: String,
    /// The player's faction.
    pub faction: String,
    /// Whether it is the reader.
    pub mine: bool,
    /// Whether the player still takes part.
    pub active: bool,
    /// Games won, drawn and lost.
    pub record: String,
    /// Points of games and byes.
    pub games: i32,
    /// Points of painting.
    pub painting: i32,
    /// All other points.
    pub other: i32,
    /// The total.
    pub total: i32,
    /// What put the row below the one above, where the totals are equal.
    pub decided_by: Option<&'static str>,
}

/// As of which week.
#[derive(Deserialize)]
pub struct AsOf {
    week: Option<u8>,
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
        rows: standings_rows(&scene, visit.t, &standings.rows),
        weeks: (1..=standings.as_of.number()).collect(),
        chart: RankChart::new(ranks, own, |player| scene.handle(player).to_owned()),
    };
    show(&page)
}

/// The rows of a table.
pub fn standings_rows(scene: &SeasonScene, t: &Texts, rows: &[Row]) -> Vec<StandingsRow> {
    rows.iter().map(|row| row_of(scene, t, row)).collect()
}

fn row_of(scene: &SeasonScene, t: &Texts, row: &Row) -> StandingsRow {
    let who = scene.players.iter().find(|player| player.id == row.player);
    let (games, painting) = (
        row.sums.of(Kind::Game) + row.sums.of(Kind::Bye),
        row.sums.of(Kind::Painting),
    );
    StandingsRow {
        rank: row.rank,
        shared: row.shared,
        movement: row.movement.filter(|places| *places != 0),
        link: address::player(scene.season.club, scene.season.id, row.player),
        handle: scene.handle(row.player).to_owned(),
        faction: who
            .map(|who| faction_name(&who.faction))
            .unwrap_or_default(),
        mine: scene.own.as_ref().is_some_and(|own| own.id == row.player),
        active: row.active,
        record: record(row),
        games: games.get(),
        painting: painting.get(),
        other: (row.total - games - painting).get(),
        total: row.total.get(),
        decided_by: row.decided_by.map(|one| t.speech().tie_break(one)),
    }
}
