//! Page: statistics of the games, ranks over the weeks, and awards.

use std::borrow::Cow;

use actix_web::get;
use app::standings::{MIN_GAMES, SeasonAwards};
use askama::Template;
use league::standings::{Prize, PrizeAward, Tally, WilsonInterval};

use super::as_of_query::AsOfQuery;
use super::context::{SeasonContext, SeasonHeader, SeasonTab};
use super::season_page::SeasonPage;
use crate::pages::frame::page_request::Layout;
use crate::pages::frame::response::{PageResult, page_template, render_page};
use crate::pages::pictures::rank_chart::RankChart;
use crate::pages::words::factions::faction_name;
use crate::pages::words::numbers::{difference, number, percent};
use crate::query_parameters::Query;
use messages::Texts;

#[derive(Template)]
#[template(path = "statistics.html")]
struct StatisticsPage {
    layout: Layout,
    t: Texts,
    header: SeasonHeader,
    as_of: u8,
    fewest_games: u32,
    tables: Vec<TallyTable>,
    chart: Option<RankChart>,
    awards: Vec<AwardLine>,
    is_final: bool,
}
page_template!(StatisticsPage);

struct TallyTable {
    key: &'static str,
    name: Cow<'static, str>,
    of: Cow<'static, str>,
    text: Cow<'static, str>,
    rows: Vec<TallyRow>,
}

struct TallyRow {
    name: String,
    games: u32,
    record: String,
    share: Option<ShareBar>,
    margin: Option<String>,
}

/// A share with its interval, in percent.
struct ShareBar {
    share: u8,
    low: u8,
    high: u8,
}

struct AwardLine {
    prize: Cow<'static, str>,
    value: String,
    holders: String,
}

#[get("/clubs/{club}/seasons/{season}/statistics")]
pub async fn show_statistics(page: SeasonPage, query: Query<AsOfQuery>) -> PageResult {
    let SeasonPage { app, context, .. } = &page;
    let (season, viewer, t) = (page.key(), page.viewer(), page.t());
    let found = app::standings::find_statistics(app, viewer, season, query.week()).await?;
    let awards = app::standings::list_awards(app, viewer, season).await?;
    let own = context.own.as_ref().map(|own| own.id);
    let role = |key: &str| match key {
        "attacker" => t.attacker().into_owned(),
        "defender" => t.defender().into_owned(),
        other => other.to_owned(),
    };
    let (by_faction, by_role, by_scenario) = (
        tally_rows(t, &found.factions, faction_name),
        tally_rows(t, &found.roles, role),
        tally_rows(t, &found.scenarios, str::to_owned),
    );
    let tables = [
        (
            "faction",
            t.by_faction(),
            t.faction(),
            t.by_faction_text(),
            by_faction,
        ),
        (
            "role",
            t.by_role(),
            t.game_role(),
            t.by_role_text(),
            by_role,
        ),
        (
            "scenario",
            t.by_scenario(),
            t.scenario(),
            t.by_scenario_text(),
            by_scenario,
        ),
    ];
    let tables = tables.into_iter().filter(|(.., rows)| !rows.is_empty());
    render_page(&StatisticsPage {
        layout: page.layout(),
        t,
        header: page.header(SeasonTab::Statistics),
        as_of: found.as_of.number(),
        fewest_games: MIN_GAMES,
        tables: tables
            .map(|(key, name, of, text, rows)| TallyTable {
                key,
                name,
                of,
                text,
                rows,
            })
            .collect(),
        chart: RankChart::new(found.ranks, own, |player| context.handle(player).to_owned()),
        awards: award_lines(context, t, &awards),
        is_final: awards.is_final,
    })
}

fn tally_rows(t: Texts, tallies: &[Tally<String>], name: impl Fn(&str) -> String) -> Vec<TallyRow> {
    let row = |tally: &Tally<String>| TallyRow {
        name: name(&tally.key),
        games: tally.games(),
        record: format!("{}–{}–{}", tally.won, tally.drawn, tally.lost),
        share: tally.win_share.as_ref().map(share_bar),
        margin: tally.mean_margin.map(|margin| difference(t, margin)),
    };
    tallies.iter().map(row).collect()
}

fn share_bar(interval: &WilsonInterval) -> ShareBar {
    ShareBar {
        share: percent(interval.share()),
        low: percent(interval.low),
        high: percent(interval.high),
    }
}

fn award_lines(context: &SeasonContext, t: Texts, awards: &SeasonAwards) -> Vec<AwardLine> {
    let line = |awarded: &PrizeAward| {
        let (prize, value) = prize_text(t, awarded);
        let holders = awarded.holders.iter().map(|player| context.handle(*player));
        AwardLine {
            prize,
            value,
            holders: holders.collect::<Vec<_>>().join(", "),
        }
    };
    awards.awards.iter().map(line).collect()
}

/// What a prize is for, and what it was won with.
pub fn prize_text(t: Texts, awarded: &PrizeAward) -> (Cow<'static, str>, String) {
    let value = number(t, awarded.value);
    match awarded.prize {
        Prize::PaintedProgress => (t.prize_painted(), t.prize_painted_value(value)),
        Prize::MostGames => (t.prize_games(), t.prize_games_value(value)),
        Prize::ToughestSchedule => (t.prize_schedule(), t.prize_schedule_value(value)),
        Prize::BiggestClimb => (t.prize_climb(), t.prize_climb_value(value)),
    }
}
