//! The table.

use crate::ids::PlayerId;
use crate::ledger::{Kind, Line};
use crate::points::LeaguePoints;
use crate::week::WeekNo;

use super::board::Board;
use super::credits::Credits;
use super::facts::SeasonFacts;
use super::ranking::{Place, Ranking};
use super::rounds::{Round, RoundKind};
use super::season::Season;
use super::tiebreaks::{Exact, TieBreak};

/// The table as of a week, with every line behind it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Standings {
    /// Last week that counts.
    pub as_of: WeekNo,
    /// In the order of the table.
    pub rows: Vec<Row>,
    /// Player by player in the order of the table, week by week.
    pub ledger: Vec<Line>,
}

/// One row of the table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// Place from 1; equal players share the better one and the next places stay empty.
    pub rank: u32,
    /// Whether others have the same rank.
    pub shared: bool,
    /// Who.
    pub player: PlayerId,
    /// Whether the player still takes part.
    pub active: bool,
    /// The sum of the player's ledger lines.
    pub total: LeaguePoints,
    /// Places gained since the week before; `None` in the first week of a player.
    pub movement: Option<i32>,
    /// The total by what it was credited for.
    pub sums: KindSums,
    /// Games by result.
    pub record: Record,
    /// The tie-breaks in the season's order.
    pub tie_breaks: Vec<TieBreakValue>,
    /// What put this row below the one above, where the totals are equal.
    pub decided_by: Option<TieBreak>,
    /// Points of each week, the dropped ones marked.
    pub weeks: Vec<WeekTotal>,
}

/// The value of one tie-break.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TieBreakValue {
    /// Which.
    pub tie_break: TieBreak,
    /// Its value; `None` where it does not apply, as direct encounters of players who never met.
    pub value: Option<Exact>,
}

/// Games of a player.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Record {
    /// Won on the table.
    pub won: u32,
    /// Drawn.
    pub drawn: u32,
    /// Lost on the table.
    pub lost: u32,
    /// Rounds without a game: byes, absences, weeks away.
    pub unplayed: u32,
}

impl Record {
    /// Games that were played.
    pub fn played(&self) -> u32 {
        self.won + self.drawn + self.lost
    }
}

/// What a week gave.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WeekTotal {
    /// The week.
    pub week: WeekNo,
    /// Its sum.
    pub points: LeaguePoints,
    /// Whether it is among the weeks that count.
    pub counts: bool,
}

impl WeekTotal {
    pub(super) fn new(week: WeekNo) -> Self {
        Self {
            week,
            points: LeaguePoints::ZERO,
            counts: true,
        }
    }
}

/// Sums by kind of credit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct KindSums([LeaguePoints; Kind::ALL.len()]);

impl KindSums {
    pub(super) fn add(&mut self, kind: Kind, amount: LeaguePoints) {
        if let Some(sum) = self.0.get_mut(kind as usize) {
            *sum += amount;
        }
    }

    /// The sum of one kind.
    pub fn of(&self, kind: Kind) -> LeaguePoints {
        self.0.get(kind as usize).copied().unwrap_or_default()
    }

    /// The sum of all kinds.
    pub fn total(&self) -> LeaguePoints {
        self.0.iter().copied().sum()
    }
}

impl Standings {
    /// The row of a player.
    pub fn row_of(&self, player: PlayerId) -> Option<&Row> {
        self.rows.iter().find(|row| row.player == player)
    }

    /// The ledger lines of a player.
    pub fn lines_of(&self, player: PlayerId) -> impl Iterator<Item = &Line> {
        self.ledger.iter().filter(move |line| line.player == player)
    }
}

/// Lines of a player's week for which there is room from the start: more of them only take longer.
const LINES: usize = 5;

/// The table as of `as_of`: only weeks up to it count, and only who had joined by then has a row.
pub fn table(facts: &SeasonFacts, as_of: WeekNo) -> Standings {
    let season = Season::of(facts, as_of);
    let credits = Credits::new(&season, as_of);
    let board = Board::new(&season, &credits, as_of);
    let mut ranking = Ranking::new(&season, &board);
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
pub(super) fn ranks_as_of(season: &Season<'_>, week: WeekNo) -> Vec<Option<u32>> {
    let credits = Credits::new(season, week);
    let board = Board::new(season, &credits, week);
    let mut ranks = vec![None; season.players.len()];
    for place in Ranking::new(season, &board).places(season, &credits, week) {
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
