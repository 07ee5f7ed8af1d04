//! Standings and ledgers as JSON.

use serde::Deserialize;
use serde_json::Value;

/// The standings.
#[derive(Clone, Debug, Deserialize)]
pub struct Table {
    pub version: i64,
    pub rows: Vec<Row>,
}

#[derive(Clone, Debug, Deserialize)]
pub struct Row {
    pub player: String,
    pub total: i64,
    pub weeks: Vec<WeekTotal>,
}

#[derive(Clone, Debug, Deserialize)]
pub struct WeekTotal {
    pub points: i64,
    /// Whether the week is among the best that count.
    pub counts: bool,
}

impl Table {
    #[track_caller]
    pub fn row_of(&self, player: &str) -> &Row {
        let mut rows = self.rows.iter();
        rows.find(|row| row.player == player).unwrap()
    }

    pub fn totals(&self) -> Vec<i64> {
        self.rows.iter().map(|row| row.total).collect()
    }
}

/// Where a player's points come from.
#[derive(Clone, Debug, Deserialize)]
pub struct Ledger {
    pub total: i64,
    pub lines: Vec<Line>,
}

#[derive(Clone, Debug, Deserialize)]
pub struct Line {
    pub week: u8,
    pub kind: String,
    pub amount: i64,
    pub version: i64,
    pub reason: Value,
    pub source: Value,
}

impl Ledger {
    pub fn sum(&self) -> i64 {
        self.lines.iter().map(|line| line.amount).sum()
    }
}

/// A ruling about points.
#[derive(Debug, Deserialize, PartialEq)]
pub struct Ruling {
    pub ruling: String,
}
