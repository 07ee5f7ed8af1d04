//! The table as data: rows, their sums, and the ledger behind them.

use crate::ids::PlayerId;
use crate::ledger::{LedgerLine, LineKind};
use crate::points::LeaguePoints;
use crate::standings::tiebreaks::TieBreak;
use crate::standings::tiebreaks::inputs::Exact;
use crate::week::WeekNo;

/// The table as of a week, with every line behind it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Standings {
    /// Last week that counts.
    pub as_of: WeekNo,
    /// In the order of the table.
    pub rows: Vec<Row>,
    /// Player by player in the order of the table, week by week.
    pub ledger: Vec<LedgerLine>,
}

/// One row of the table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// Place from 1; equal players share the better one and the next places stay empty.
    pub rank: u32,
    /// Whether others have the same rank.
    pub shared: bool,
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
    pub tie_break: TieBreak,
    /// Its value; `None` where it does not apply, as direct encounters of players who never met.
    pub value: Option<Exact>,
}

/// Games of a player.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Record {
    /// Won on the table.
    pub won: u32,
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
    pub week: WeekNo,
    pub points: LeaguePoints,
    /// Whether it is among the weeks that count.
    pub counts: bool,
}

impl WeekTotal {
    pub fn new(week: WeekNo) -> Self {
        Self {
            week,
            points: LeaguePoints::ZERO,
            counts: true,
        }
    }
}

/// Sums by kind of credit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct KindSums([LeaguePoints; LineKind::ALL.len()]);

impl KindSums {
    pub fn add(&mut self, kind: LineKind, amount: LeaguePoints) {
        if let Some(sum) = self.0.get_mut(kind as usize) {
            *sum += amount;
        }
    }

    /// The sum of one kind.
    pub fn sum_of(&self, kind: LineKind) -> LeaguePoints {
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
    pub fn lines_of(&self, player: PlayerId) -> impl Iterator<Item = &LedgerLine> {
        self.ledger.iter().filter(move |line| line.player == player)
    }
}
