//! Prizes: awards that follow from the season's data.

use std::collections::HashMap;

use crate::ids::PlayerId;
use crate::points::Points;
use crate::standings::facts::SeasonFacts;
use crate::standings::table::row::Standings;
use crate::standings::table::table;
use crate::standings::tiebreaks::inputs::Exact;
use crate::week::WeekNo;

use super::list_side_games;
use super::rank_history::rank_history;

/// What a prize is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Prize {
    /// Most army points newly finished over the season.
    PaintedProgress,
    /// Most games played.
    MostGames,
    /// Highest mean of the opponents' totals over the games played.
    ToughestSchedule,
    /// Most places gained from the worst rank after any week to the final one.
    BiggestClimb,
}

impl Prize {
    pub const ALL: [Self; 4] = [
        Self::PaintedProgress,
        Self::MostGames,
        Self::ToughestSchedule,
        Self::BiggestClimb,
    ];
}

/// A prize and who gets it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PrizeAward {
    pub prize: Prize,
    /// Everyone with the best value, in the order of the table.
    pub holders: Vec<PlayerId>,
    pub value: Exact,
}

/// The prizes of a season that ended with `last`; one without a value above zero is not awarded.
pub fn awards(facts: &SeasonFacts, last: WeekNo) -> Vec<PrizeAward> {
    let standings = table(facts, last);
    let given = Prize::ALL.into_iter().filter_map(|prize| {
        let values = match prize {
            Prize::PaintedProgress => painted_progress(facts, last),
            Prize::MostGames => most_games(&standings),
            Prize::ToughestSchedule => schedules(facts, &standings),
            Prize::BiggestClimb => climbs(facts, &standings),
        };
        award(prize, &standings, &values)
    });
    given.collect()
}

type Values = HashMap<PlayerId, Exact>;

fn award(prize: Prize, standings: &Standings, values: &Values) -> Option<PrizeAward> {
    let value = *values.values().max()?;
    let with_best = standings
        .rows
        .iter()
        .filter(|row| values.get(&row.player) == Some(&value));
    let holders: Vec<PlayerId> = with_best.map(|row| row.player).collect();
    (value > Exact::from_integer(0) && !holders.is_empty()).then_some(PrizeAward {
        prize,
        holders,
        value,
    })
}

fn painted_progress(facts: &SeasonFacts, last: WeekNo) -> Values {
    let mut finished: HashMap<PlayerId, Points> = HashMap::new();
    for painted in facts.painted.iter().filter(|painted| painted.week <= last) {
        *finished.entry(painted.player).or_default() += painted.new_points;
    }
    let values = finished.into_iter();
    values
        .map(|(player, points)| (player, Exact::from_integer(points.get().into())))
        .collect()
}

fn most_games(standings: &Standings) -> Values {
    let played = standings
        .rows
        .iter()
        .map(|row| (row.player, row.record.played()));
    played
        .map(|(player, games)| (player, Exact::from_integer(games.into())))
        .collect()
}

fn schedules(facts: &SeasonFacts, standings: &Standings) -> Values {
    let totals: HashMap<_, _> = standings
        .rows
        .iter()
        .map(|row| (row.player, i64::from(row.total.get())))
        .collect();
    let mut met: HashMap<PlayerId, (i64, i64)> = HashMap::new();
    for game in list_side_games(facts, standings.as_of) {
        let (sum, games) = met.entry(game.player).or_default();
        *sum += totals.get(&game.opponent).copied().unwrap_or(0);
        *games += 1;
    }
    met.into_iter()
        .map(|(player, (sum, games))| (player, Exact::new(sum, games)))
        .collect()
}

fn climbs(facts: &SeasonFacts, standings: &Standings) -> Values {
    let histories = rank_history(facts, standings.as_of).into_iter();
    let climbs = histories.filter_map(|history| {
        let worst = history.ranks.iter().flatten().max()?;
        let last = history.ranks.last().copied().flatten()?;
        Some((
            history.player,
            Exact::from_integer(i64::from(*worst) - i64::from(last)),
        ))
    });
    climbs.collect()
}
