//! Page: the standings of a season.

use actix_web::get;
use askama::Template;
use league::ledger::LineKind;
use league::standings::Row;

use super::as_of_query::AsOfQuery;
use super::context::{SeasonContext, SeasonHeader, SeasonTab};
use super::player::record;
use super::season_page::SeasonPage;
use crate::pages::frame::page_request::Layout;
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::pages::frame::urls;
use crate::pages::pictures::rank_chart::RankChart;
use crate::query_parameters::Query;
use messages::Texts;

#[derive(Template)]
#[template(path = "standings.html")]
struct StandingsPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    as_of: u8,
    rows: Vec<StandingsRow>,
    weeks: Vec<u8>,
    chart: Option<RankChart>,
}
page_template!(StandingsPage);

/// A row of the table.
pub struct StandingsRow {
    /// Place from 1.
    pub rank: u32,
    /// Whether others have the same.
    pub shared: bool,
    /// Places gained, unless none.
    pub movement: Option<i32>,
    pub link: String,
    pub handle: String,
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
    pub total: i32,
    /// What put the row below the one above, where the totals are equal.
    pub decided_by: Option<String>,
}

#[get("/clubs/{club}/seasons/{season}/standings")]
pub async fn show_standings(page: SeasonPage, query: Query<AsOfQuery>) -> PageResult {
    let SeasonPage { app, context, .. } = &page;
    let (season, viewer) = (page.key(), page.viewer());
    let found = app::standings::find_standings(app, viewer, season, query.week()).await?;
    let standings = found.standings;
    let own = context.own.as_ref().map(|own| own.id);
    let as_of = standings.as_of;
    let ranks = app::standings::find_rank_history(app, viewer, season.week(as_of)).await?;
    render_page(&StandingsPage {
        layout: page.layout(),
        t: page.t(),
        header: page.header(SeasonTab::Standings),
        as_of: standings.as_of.number(),
        rows: standings_rows(context, page.t(), &standings.rows),
        weeks: (1..=standings.as_of.number()).collect(),
        chart: RankChart::new(ranks, own, |player| context.handle(player).to_owned()),
    })
}

/// The rows of a table.
pub fn standings_rows(context: &SeasonContext, t: Texts, rows: &[Row]) -> Vec<StandingsRow> {
    rows.iter().map(|row| row_of(context, t, row)).collect()
}

fn row_of(context: &SeasonContext, t: Texts, row: &Row) -> StandingsRow {
    let (games, painting) = (
        row.sums.sum_of(LineKind::Game) + row.sums.sum_of(LineKind::Bye),
        row.sums.sum_of(LineKind::Painting),
    );
    StandingsRow {
        rank: row.rank,
        shared: row.shared,
        movement: row.movement.filter(|places| *places != 0),
        link: urls::player(context.season.key(), row.player),
        handle: context.handle(row.player).to_owned(),
        faction: context.faction(row.player),
        mine: context.own.as_ref().is_some_and(|own| own.id == row.player),
        active: row.active,
        record: record(row),
        games: games.get(),
        painting: painting.get(),
        other: (row.total - games - painting).get(),
        total: row.total.get(),
        decided_by: row.decided_by.map(|one| t.say(&one.message())),
    }
}
