//! The league table: rows in order with every ledger line behind them.

pub mod credits;
mod ranking;
pub mod row;
pub mod scores_before;
pub mod season;
mod tie_break_inputs;

use crate::week::WeekNo;

use super::facts::SeasonFacts;
use super::rounds::{PlayerRound, RoundKind};

use credits::Credits;
use ranking::{RankedPlayer, Ranking};
use row::{Record, Row, Standings, TieBreakValue};
use season::IndexedSeason;
use tie_break_inputs::tie_break_inputs;

/// Ledger lines of a player's week for which memory is reserved: more of them only take longer.
const EXPECTED_LINES_PER_WEEK: usize = 5;

/// The table as of `as_of`: only weeks up to it count, and only who had joined by then has a row.
pub fn table(facts: &SeasonFacts, as_of: WeekNo) -> Standings {
    let season = IndexedSeason::new(facts, as_of);
    let credits = Credits::new(&season, as_of);
    let inputs = tie_break_inputs(&season, &credits, as_of);
    let mut ranking = Ranking::new(&season, &inputs);
    let ranked_players = ranking.ranked_players(&season, &credits, as_of);
    let before = as_of.previous().map(|week| ranks_as_of(&season, week));
    let weeks = usize::from(as_of.number());
    let mut ledger = Vec::with_capacity(ranked_players.len() * weeks * EXPECTED_LINES_PER_WEEK);
    let mut rows = Vec::with_capacity(ranked_players.len());
    for ranked in ranked_players {
        credits.write_lines(ranked.player, &mut ledger);
        let earlier = before.as_ref().and_then(|ranks| *ranks.get(ranked.player)?);
        rows.extend(row(&season, &credits, &ranking, ranked, as_of, earlier));
    }
    Standings {
        as_of,
        rows,
        ledger,
    }
}

/// The rank of each player as of a week, `None` before the player joined.
pub fn ranks_as_of(season: &IndexedSeason<'_>, week: WeekNo) -> Vec<Option<u32>> {
    let credits = Credits::new(season, week);
    let inputs = tie_break_inputs(season, &credits, week);
    let mut ranks = vec![None; season.players.len()];
    for ranked in Ranking::new(season, &inputs).ranked_players(season, &credits, week) {
        if let Some(rank) = ranks.get_mut(ranked.player) {
            *rank = Some(ranked.rank);
        }
    }
    ranks
}

fn row(
    season: &IndexedSeason<'_>,
    credits: &Credits<'_>,
    ranking: &Ranking<'_>,
    ranked: RankedPlayer,
    as_of: WeekNo,
    earlier: Option<u32>,
) -> Option<Row> {
    let player = season.players.get(ranked.player)?;
    let sums = *credits.sums.get(ranked.player)?;
    let movement = earlier.map(|earlier| i64::from(earlier) - i64::from(ranked.rank));
    let values = ranking.values_of(ranked.player);
    Some(Row {
        rank: ranked.rank,
        shared: ranked.shared,
        player: player.player,
        active: player.takes_part_in(as_of),
        total: sums.total(),
        movement: movement.and_then(|movement| i32::try_from(movement).ok()),
        sums,
        record: record(credits.rounds.get(ranked.player)),
        tie_breaks: values
            .map(|(tie_break, value)| TieBreakValue { tie_break, value })
            .collect(),
        decided_by: ranked.decided_by,
        weeks: credits.weeks.get(ranked.player).to_vec(),
    })
}

fn record(rounds: &[PlayerRound]) -> Record {
    let mut record = Record::default();
    for round in rounds {
        let count = match (round.kind, round.result) {
            (RoundKind::Played { .. }, 2) => &mut record.won,
            (RoundKind::Played { .. }, 1) => &mut record.drawn,
            (RoundKind::Played { .. }, _) => &mut record.lost,
            _ => &mut record.unplayed,
        };
        *count += 1;
    }
    record
}
