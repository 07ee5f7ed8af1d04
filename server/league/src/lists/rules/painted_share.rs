//! Painted share: how much of the list must be finished.

use messages::{Message, findings, list_rules};

use crate::lists::finding::{Finding, Measure};
use crate::lists::line::ListLine;
use crate::lists::list_facts::ListFacts;
use crate::painting::{PaintCounting, UnitOnList, painted_share};
use crate::points::Points;
use crate::share::Share;

/// "At least 50 % of the list's points are painted", each unit pro rata by its finished models.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PaintedShare {
    /// Least share of the list's own points; exact, nothing is rounded before the decision.
    pub least: Share,
}

impl PaintedShare {
    pub(super) fn message(&self) -> Message {
        list_rules::list_rule_painted_share(self.least)
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        let units: Vec<UnitOnList> = facts
            .lines
            .iter()
            .map(|line| on_list(facts, line))
            .collect();
        let painted = painted_share(&units, PaintCounting::ByModel);
        if facts.total == Points::ZERO || painted >= self.least {
            return;
        }
        let (least, actual) = (
            self.least.ceil_of(facts.total),
            painted.floor_of(facts.total),
        );
        let message = findings::finding_painted_share(actual, facts.total, least, self.least);
        findings.push(Finding::new("list.painted-share", message).measured(
            Measure::Points,
            least.get(),
            actual.get(),
        ));
    }
}

fn on_list(facts: &ListFacts<'_>, line: &ListLine<'_>) -> UnitOnList {
    let finished = facts.painted;
    UnitOnList {
        points: line.points,
        models: line.entry.models,
        painted: finished
            .and_then(|finished| finished.get(&line.entry.key))
            .copied()
            .unwrap_or(0),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::rules::Rule;
    use crate::lists::samples::{numbers, painted, under};

    fn half() -> Rule {
        let least = Share::percent(50);
        Rule::PaintedShare(PaintedShare { least })
    }

    #[test]
    fn units_count_pro_rata_by_their_finished_models_without_rounding() {
        // 63 * 2/9 + 48 * 5/6 = 54 of 111.
        let now = "a turf-cutters 9, b rushlight-kin 6";
        let report = painted(half(), now, &[("a", 2), ("b", 5)]);
        assert_eq!(numbers(&report.findings), [("list.painted-share", 56, 54)]);
        // 77 * 6/11 + 77 * 5/11 = 77 of 154, though neither part is a whole number.
        let now = "a turf-cutters 11, b turf-cutters 11";
        let report = painted(half(), now, &[("a", 6), ("b", 5)]);
        assert_eq!(report.findings, []);
        let report = painted(half(), now, &[("a", 5), ("b", 5)]);
        assert_eq!(numbers(&report.findings), [("list.painted-share", 77, 70)]);
    }

    #[test]
    fn more_finished_models_than_fielded_count_as_all_of_them() {
        let now = "a turf-cutters 8, b rushlight-kin 7";
        let report = painted(half(), now, &[("a", 99)]);
        assert_eq!(report.findings, []);
    }

    #[test]
    fn nothing_painted_is_nothing() {
        assert_eq!(
            numbers(&under(half(), 500, "a turf-cutters 8")),
            [("list.painted-share", 28, 0)]
        );
    }
}
