//! Standings as JSON.

use std::collections::BTreeMap;

use league::ledger::LineKind;
use league::standings::{Exact, Record, Row, Standings, TieBreakValue, WeekTotal};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use crate::csv::table::{columns, escape_formula, optional_cell};
use crate::season::tie_breaks::TieBreakDocument;
use crate::table::ledger::{LineDocument, LineKindDocument};

/// The table as of a week, with every line behind it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct StandingsDocument {
    /// Last week that counts.
    #[schema(example = 3)]
    pub as_of: u8,
    /// In the order of the table.
    pub rows: Vec<RowDocument>,
    /// Player by player in the order of the table, week by week.
    pub ledger: Vec<LineDocument>,
}

/// The table of a week, as it was: with the names that its players had.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct FrozenTableDocument {
    /// Last week that counts.
    #[schema(example = 3)]
    pub as_of: u8,
    /// In the order of the table.
    pub rows: Vec<NamedRowDocument>,
    /// Player by player in the order of the table, week by week; none while the week is played.
    pub ledger: Vec<LineDocument>,
}

/// A row with the player's name.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct NamedRowDocument {
    /// Name in this season.
    #[schema(example = "Corvanel")]
    pub handle: String,
    /// Key of the faction.
    #[schema(example = "sodwether-moot")]
    pub faction: String,
    /// The row.
    #[serde(flatten)]
    pub row: RowDocument,
}

/// One row.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct RowDocument {
    /// Place from 1; equal players share the better one.
    #[schema(example = 3)]
    pub rank: u32,
    /// Whether others have the same rank.
    pub shared: bool,
    /// Who.
    pub player: Uuid,
    /// Whether the player still takes part.
    pub active: bool,
    /// The sum of the player's ledger lines.
    #[schema(example = 31)]
    pub total: i32,
    /// Places gained since the week before.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(example = -1)]
    pub movement: Option<i32>,
    /// The total by what it was credited for; kinds that gave nothing are left out.
    pub sums: BTreeMap<LineKindDocument, i32>,
    /// Games by result.
    pub record: RecordDocument,
    /// The tie-breaks in the season's order.
    pub tie_breaks: Vec<TieBreakValueDocument>,
    /// What put this row below the one above, where the totals are equal.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub decided_by: Option<TieBreakDocument>,
    /// Points of each week.
    pub weeks: Vec<WeekTotalDocument>,
}

/// Games of a player.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct RecordDocument {
    /// Won on the table.
    pub won: u32,
    /// Drawn.
    pub drawn: u32,
    /// Lost on the table.
    pub lost: u32,
    /// Rounds without a game.
    pub unplayed: u32,
}

/// The value of one tie-break.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct TieBreakValueDocument {
    /// Which.
    pub tie_break: TieBreakDocument,
    /// Its value; absent where it does not apply.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub value: Option<ExactDocument>,
}

/// An exact fraction in lowest terms.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct ExactDocument {
    /// Numerator.
    #[schema(example = 15)]
    pub numerator: i64,
    /// Denominator, at least 1.
    #[schema(example = 4)]
    pub denominator: i64,
}

/// What a week gave.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct WeekTotalDocument {
    /// The week.
    pub week: u8,
    /// Its sum.
    pub points: i32,
    /// Whether it is among the weeks that count.
    pub counts: bool,
}

impl From<&Standings> for StandingsDocument {
    fn from(standings: &Standings) -> Self {
        Self {
            as_of: standings.as_of.number(),
            rows: standings.rows.iter().map(Into::into).collect(),
            ledger: standings.ledger.iter().map(Into::into).collect(),
        }
    }
}

impl From<&Row> for RowDocument {
    fn from(row: &Row) -> Self {
        let sums = LineKind::ALL
            .into_iter()
            .map(|kind| (kind.into(), row.sums.sum_of(kind).get()));
        Self {
            rank: row.rank,
            shared: row.shared,
            player: row.player.0,
            active: row.active,
            total: row.total.get(),
            movement: row.movement,
            sums: sums.filter(|(_, amount)| *amount != 0).collect(),
            record: row.record.into(),
            tie_breaks: row.tie_breaks.iter().map(|&value| value.into()).collect(),
            decided_by: row.decided_by.map(Into::into),
            weeks: row.weeks.iter().map(|&week| week.into()).collect(),
        }
    }
}

impl RowDocument {
    /// The names of its cells in a spreadsheet program.
    pub fn columns(as_of: u8) -> Vec<String> {
        let mut names = columns(&[
            "rank", "player", "faction", "active", "total", "movement", "won", "drawn", "lost",
            "unplayed",
        ]);
        names.extend((1..=as_of).map(|week| format!("week_{week}")));
        names
    }

    /// The row as cells, with the player's name and faction.
    pub fn cells(&self, handle: &str, faction: &str, as_of: u8) -> Vec<String> {
        let mut cells = vec![
            self.rank.to_string(),
            escape_formula(handle),
            escape_formula(faction),
            self.active.to_string(),
            self.total.to_string(),
            optional_cell(self.movement),
            self.record.won.to_string(),
            self.record.drawn.to_string(),
            self.record.lost.to_string(),
            self.record.unplayed.to_string(),
        ];
        cells.extend((1..=as_of).map(|week| {
            let of_week = self.weeks.iter().find(|it| it.week == week);
            optional_cell(of_week.map(|it| it.points))
        }));
        cells
    }
}

impl From<Record> for RecordDocument {
    fn from(record: Record) -> Self {
        Self {
            won: record.won,
            drawn: record.drawn,
            lost: record.lost,
            unplayed: record.unplayed,
        }
    }
}

impl From<TieBreakValue> for TieBreakValueDocument {
    fn from(value: TieBreakValue) -> Self {
        Self {
            tie_break: value.tie_break.into(),
            value: value.value.map(Into::into),
        }
    }
}

impl From<Exact> for ExactDocument {
    fn from(exact: Exact) -> Self {
        Self {
            numerator: *exact.numer(),
            denominator: *exact.denom(),
        }
    }
}

impl From<WeekTotal> for WeekTotalDocument {
    fn from(week: WeekTotal) -> Self {
        Self {
            week: week.week.number(),
            points: week.points.get(),
            counts: week.counts,
        }
    }
}
