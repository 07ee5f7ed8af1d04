//! What the games of a season have in common, the ranks over its weeks, and its awards.

use actix_web::get;
use actix_web::web::{Data, Path};
use app::Desk;
use app::standings::{FEWEST_GAMES, SeasonAwards};
use askama::Template;
use league::standings::{Awarded, Interval, Prize, Tally};
use league::week::WeekNo;
use serde::Deserialize;

use super::address::InSeason;
use super::answer::{PageAnswer, framed, show};
use super::chart::RankChart;
use super::factions::faction_name;
use super::figure::{difference, number, percent};
use super::season_scene::{SeasonHead, SeasonScene, Tab};
use super::texts::{Phrase, Texts};
use super::visit::{Frame, Visit};
use crate::query::Query;

#[derive(Template)]
#[template(path = "statistics.html")]
struct StatisticsPage {
    frame: Frame,
    t: &'static Texts,
    head: SeasonHead,
    as_of: u8,
    fewest_games: u32,
    tables: Vec<TallyTable>,
    chart: Option<RankChart>,
    awards: Vec<AwardLine>,
    is_final: bool,
}
framed!(StatisticsPage);

struct TallyTable {
    key: &'static str,
    name: Phrase,
    of: Phrase,
    text: Phrase,
    rows: Vec<TallyRow>,
}

struct TallyRow {
    name: String,
    games: u32,
    record: String,
    share: Option<ShareDrawn>,
    margin: Option<String>,
}

/// A share with its interval, in percent.
struct ShareDrawn {
    share: u8,
    low: u8,
    high: u8,
}

struct AwardLine {
    prize: Phrase,
    value: String,
    holders: String,
}

/// As of which week.
#[derive(Deserialize)]
pub struct AsOf {
    week: Option<u8>,
}

/// The statistics.
#[get("/clubs/{club}/seasons/{season}/statistics")]
pub async fn show_statistics(
    desk: Data<Desk>,
    visit: Visit,
    path: Path<InSeason>,
    query: Query<AsOf>,
) -> PageAnswer {
    let (club, season) = path.ids();
    let (viewer, t) = (visit.viewer, visit.t);
    let scene = SeasonScene::load(&desk, &visit, club, season).await?;
    let week = query.week.and_then(WeekNo::new);
    let found = app::standings::find_statistics(&desk, viewer, club, season, week).await?;
    let awards = app::standings::list_awards(&desk, viewer, club, season).await?;
    let own = scene.own.as_ref().map(|own| own.id);
    let role = |key: &str| match key {
        "attacker" => t.figures.attacker.to_string(),
        "defender" => t.figures.defender.to_string(),
        other => other.to_owned(),
    };
    let (by_faction, by_role, by_scenario) = (
        tally_rows(t, &found.factions, faction_name),
        tally_rows(t, &found.roles, role),
        tally_rows(t, &found.scenarios, str::to_owned),
    );
    let f = &t.figures;
    let tables = [
        (
            "faction",
            f.by_faction,
            t.faction,
            f.by_faction_text,
            by_faction,
        ),
        ("role", f.by_role, f.role, f.by_role_text, by_role),
        (
            "scenario",
            f.by_scenario,
            t.scenario,
            f.by_scenario_text,
            by_scenario,
        ),
    ];
    let tables = tables.into_iter().filter(|(.., rows)| !rows.is_empty());
    let page = StatisticsPage {
        frame: visit.frame(),
        t,
        head: scene.head(&visit, Tab::Statistics),
        as_of: found.as_of.number(),
        fewest_games: FEWEST_GAMES,
        tables: tables
            .map(|(key, name, of, text, rows)| TallyTable {
                key,
                name,
                of,
                text,
                rows,
            })
            .collect(),
        chart: RankChart::new(found.ranks, own, |player| scene.handle(player).to_owned()),
        awards: award_lines(&scene, t, &awards),
        is_final: awards.is_final,
    };
    show(&page)
}

fn tally_rows(
    t: &Texts,
    tallies: &[Tally<String>],
    name: impl Fn(&str) -> String,
) -> Vec<TallyRow> {
    let row = |tally: &Tally<String>| TallyRow {
        name: name(&tally.key),
        games: tally.games(),
        record: format!("{}–{}–{}", tally.won, tally.drawn, tally.lost),
        share: tally.win_share.as_ref().map(drawn),
        margin: tally.mean_margin.map(|margin| difference(t, margin)),
    };
    tallies.iter().map(row).collect()
}

fn drawn(interval: &Interval) -> ShareDrawn {
    ShareDrawn {
        share: percent(interval.share()),
        low: percent(interval.low),
        high: percent(interval.high),
    }
}

fn award_lines(scene: &SeasonScene, t: &Texts, awards: &SeasonAwards) -> Vec<AwardLine> {
    let line = |awarded: &Awarded| {
        let (prize, value) = prize_words(t, awarded);
        let holders = awarded.holders.iter().map(|player| scene.handle(*player));
        AwardLine {
            prize,
            value,
            holders: holders.collect::<Vec<_>>().join(", "),
        }
    };
    awards.awards.iter().map(line).collect()
}

/// What a prize is for, and what it was won with.
pub fn prize_words(t: &Texts, awarded: &Awarded) -> (Phrase, String) {
    let f = &t.figures;
    let (prize, value) = match awarded.prize {
        Prize::PaintedProgress => (f.prize_painted, f.prize_painted_value),
        Prize::MostGames => (f.prize_games, f.prize_games_value),
        Prize::ToughestSchedule => (f.prize_schedule, f.prize_schedule_value),
        Prize::BiggestClimb => (f.prize_climb, f.prize_climb_value),
    };
    (prize, value.with(number(t, awarded.value)))
}
