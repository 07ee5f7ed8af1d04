//! Check of an export: every row of the table is the sum of its ledger lines.

use std::collections::{BTreeMap, BTreeSet};

use crate::table::ledger::LineKindDocument;
use crate::table::standings::StandingsDocument;

/// Whether every row has what its lines give, in all and by kind, and no line is nobody's.
pub fn rows_match_ledger(standings: &StandingsDocument) -> bool {
    let rows = &standings.rows;
    let known: BTreeSet<_> = rows.iter().map(|row| row.player).collect();
    let mut lines = standings.ledger.iter();
    lines.all(|line| known.contains(&line.player))
        && rows.iter().all(|row| {
            let mut sums: BTreeMap<LineKindDocument, i64> = BTreeMap::new();
            let own = standings
                .ledger
                .iter()
                .filter(|line| line.player == row.player);
            for line in own {
                *sums.entry(line.kind).or_default() += i64::from(line.amount);
            }
            sums.retain(|_, sum| *sum != 0);
            let stated = row.sums.iter().map(|(kind, sum)| (*kind, i64::from(*sum)));
            i64::from(row.total) == sums.values().sum::<i64>() && stated.eq(sums)
        })
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;

    fn table() -> StandingsDocument {
        let player = Uuid::nil();
        let line = |kind: &str, amount: i32| {
            serde_json::json!({
                "player": player, "week": 1, "kind": kind, "amount": amount,
                "reason": {"kind": "bye"}, "sentence": "no opponent",
                "source": {"kind": "rule"}, "version": 1,
            })
        };
        let row = serde_json::json!({
            "rank": 1, "shared": false, "player": player, "active": true, "total": 5,
            "sums": {"bye": 6, "late_list": -1},
            "record": {"won": 0, "drawn": 0, "lost": 0, "unplayed": 2},
            "tie_breaks": [], "weeks": [],
        });
        let ledger = [line("bye", 3), line("bye", 3), line("late_list", -1)];
        let table = serde_json::json!({"as_of": 1, "rows": [row], "ledger": ledger});
        serde_json::from_value(table).unwrap()
    }

    #[test]
    fn a_row_is_the_sum_of_its_lines() {
        assert!(rows_match_ledger(&table()));
    }

    #[test]
    fn a_changed_amount_kind_total_or_owner_is_noticed() {
        let changes: [fn(&mut StandingsDocument); 4] = [
            |table| table.ledger[0].amount = 4,
            |table| table.ledger[0].kind = LineKindDocument::Game,
            |table| table.rows[0].total = 6,
            |table| table.ledger[0].player = Uuid::max(),
        ];
        for change in changes {
            let mut changed = table();
            change(&mut changed);
            assert!(!rows_match_ledger(&changed), "{changed:?}");
        }
    }
}
