//! The table.

pub mod credits;
mod ranking;
pub mod row;
pub mod scores_before;
pub mod season;
mod tie_break_inputs;

use crate::week::WeekNo;

use super::facts::SeasonFacts;
use super::rounds::{Round, RoundKind};
use credits::Credits;
use ranking::{Place, Ranking};
use row::{Record, Row, Standings, TieBreakValue};
use season::Season;
use tie_break_inputs::tie_break_inputs;

/// Lines of a player's week for which there is room from the start: more of them only take longer.
const LINES: usize = 5;

/// The table as of `as_of`: only weeks up to it count, and only who had joined by then has a row.
pub fn table(facts: &SeasonFacts, as_of: WeekNo) -> Standings {
    let season = Season::of(facts, as_of);
    let credits = Credits::new(&season, as_of);
    let inputs = tie_break_inputs(&season, &credits, as_of);
    let mut ranking = Ranking::new(&season, &inputs);
    let places = ranking.places(&season, &credits, as_of);
    let before = as_of.previous().map(|week| ranks_as_of(&season, week));
    let weeks = usize::from(as_of.number());
    let mut ledger = Vec::with_capacity(places.len() * weeks * LINES);
    let mut rows = Vec::with_capacity(places.len());
    for place in places {
        credits.write_lines(place.player, &mut ledger);
        let earlier = before.as_ref().and_then(|ranks| *ranks.get(place.player)?);
        rows.extend(row(&season, &credits, &ranking, place, as_of, earlier));
    }
    Standings {
        as_of,
        rows,
        ledger,
    }
}

/// The rank of each player as of a week, `None` before the player joined.
pub fn ranks_as_of(season: &Season<'_>, week: WeekNo) -> Vec<Option<u32>> {
    let credits = Credits::new(season, week);
    let inputs = tie_break_inputs(season, &credits, week);
    let mut ranks = vec![None; season.players.len()];
    for place in Ranking::new(season, &inputs).places(season, &credits, week) {
        if let Some(rank) = ranks.get_mut(place.player) {
            *rank = Some(place.rank);
        }
    }
    ranks
}

fn row(
    season: &Season<'_>,
    credits: &Credits<'_>,
    ranking: &Ranking<'_>,
    place: Place,
    as_of: WeekNo,
    earlier: Option<u32>,
) -> Option<Row> {
    let player = season.players.get(place.player)?;
    let sums = *credits.sums.get(place.player)?;
    let movement = earlier.map(|earlier| i64::from(earlier) - i64::from(place.rank));
    let values = ranking.values_of(place.player);
    Some(Row {
        rank: place.rank,
        shared: place.shared,
        player: player.player,
        active: player.takes_part_in(as_of),
        total: sums.total(),
        movement: movement.and_then(|places| i32::try_from(places).ok()),
        sums,
        record: record(credits.rounds.of(place.player)),
        tie_breaks: values
            .map(|(tie_break, value)| TieBreakValue { tie_break, value })
            .collect(),
        decided_by: place.decided_by,
        weeks: credits.weeks.of(place.player).to_vec(),
    })
}

fn record(rounds: &[Round]) -> Record {
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
