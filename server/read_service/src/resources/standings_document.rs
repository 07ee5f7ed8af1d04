//! The standings as JSON. What all rows have in common is written once: it is read more than anything else.

use std::collections::BTreeMap;

use document::season::tie_breaks::TieBreakDocument;
use document::table::ledger::LineKindDocument;
use document::table::standings::{
    ExactDocument, NamedRowDocument, RecordDocument, WeekTotalDocument,
};
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

use super::standings::StandingsTable;

/// The table as of a week.
#[derive(Serialize, ToSchema)]
pub struct PublicStandings {
    /// The season's version that it belongs to.
    version: i64,
    /// The season's name.
    season: String,
    /// Last week that counts.
    as_of: u8,
    /// In the season's order; each row has its values in the same order.
    tie_breaks: Vec<TieBreakDocument>,
    /// In the order of the table.
    rows: Vec<PublicStandingsRow>,
}

/// One row.
#[derive(Serialize, ToSchema)]
struct PublicStandingsRow {
    /// Name in this season.
    handle: String,
    /// Key of the faction.
    faction: String,
    /// Place from 1; equal players share the better one.
    rank: u32,
    /// Whether others have the same rank.
    shared: bool,
    /// Who.
    player: Uuid,
    /// Whether the player still takes part.
    active: bool,
    /// The sum of the player's ledger lines.
    total: i32,
    /// Places gained since the week before.
    #[serde(skip_serializing_if = "Option::is_none")]
    movement: Option<i32>,
    /// The total by what it was credited for; kinds that gave nothing are left out.
    sums: BTreeMap<LineKindDocument, i32>,
    /// Games by result.
    record: RecordDocument,
    /// The values of the tie-breaks as whole numbers or fractions in lowest terms, such as `9/2`; null
    /// where one does not apply.
    #[schema(example = json!([null, "9/2", "-3"]))]
    tie_breaks: Vec<Option<String>>,
    /// What put this row below the one above, where the totals are equal.
    #[serde(skip_serializing_if = "Option::is_none")]
    decided_by: Option<TieBreakDocument>,
    /// Points of each week.
    weeks: Vec<WeekTotalDocument>,
}

impl From<StandingsTable> for PublicStandings {
    fn from(table: StandingsTable) -> Self {
        let first = table.rows.first();
        let values = first.map_or(&[][..], |named| &named.row.tie_breaks);
        Self {
            version: table.version,
            season: table.season,
            as_of: table.as_of,
            tie_breaks: values.iter().map(|value| value.tie_break).collect(),
            rows: table
                .rows
                .into_iter()
                .map(PublicStandingsRow::from)
                .collect(),
        }
    }
}

impl From<NamedRowDocument> for PublicStandingsRow {
    fn from(named: NamedRowDocument) -> Self {
        let NamedRowDocument {
            handle,
            faction,
            row,
        } = named;
        Self {
            handle,
            faction,
            rank: row.rank,
            shared: row.shared,
            player: row.player,
            active: row.active,
            total: row.total,
            movement: row.movement,
            sums: row.sums,
            record: row.record,
            tie_breaks: row
                .tie_breaks
                .iter()
                .map(|it| it.value.map(exact))
                .collect(),
            decided_by: row.decided_by,
            weeks: row.weeks,
        }
    }
}

fn exact(value: ExactDocument) -> String {
    match value.denominator {
        1 => value.numerator.to_string(),
        denominator => format!("{}/{denominator}", value.numerator),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_whole_number_is_written_without_a_denominator() {
        let written = |numerator, denominator| {
            exact(ExactDocument {
                numerator,
                denominator,
            })
        };
        assert_eq!([written(-3, 1), written(9, 2)], ["-3", "9/2"]);
    }
}
