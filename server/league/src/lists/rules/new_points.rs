//! New points: how much may be added to last week's list.

use messages::{Message, findings, list_rules};

use crate::lists::amount::Amount;
use crate::lists::finding::{Finding, Measure};
use crate::lists::list_facts::ListFacts;
use crate::points::Points;

/// "At most 150 points are new since last week", at this week's prices.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NewPoints {
    /// Points, or a share of the cap (rounded down to whole points).
    pub most: Amount,
}

impl NewPoints {
    pub(super) fn message(&self) -> Message {
        list_rules::list_rule_new_points(self.most.message_of_cap())
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        let Some(comparison) = &facts.comparison else {
            return;
        };
        let old: Points = comparison.pairs.iter().map(|pair| pair.old_points()).sum();
        let new = facts.total.saturating_sub(old);
        let most = self.most.max_of(facts.cap);
        if new > most {
            let fresh = comparison.pairs.iter().filter_map(|pair| {
                let now = pair.now?;
                (pair.old_points() < now.points).then_some(&now.entry.key)
            });
            let message = findings::finding_new_points(new, most);
            findings.push(
                Finding::new("list.new-points", message)
                    .measured(Measure::Points, most.get(), new.get())
                    .entries(fresh),
            );
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::rules::Rule;
    use crate::lists::samples::{after, entries, numbers, under};

    #[test]
    fn new_units_growth_and_options_count_as_new() {
        let rule = |points| {
            let most = Amount::Points(Points::new(points));
            Rule::NewPoints(NewPoints { most })
        };
        let before = "a turf-cutters 8, b stilt-waders 4";
        let now = "a turf-cutters 9 mud-sledges, c rushlight-kin 6";
        assert_eq!(after(before, rule(63), 500, now), []);
        let findings = after(before, rule(62), 500, now);
        assert_eq!(numbers(&findings), [("list.new-points", 62, 63)]);
        assert_eq!(entries(&findings[0]), ["a", "c"]);
    }

    #[test]
    fn the_first_list_of_a_player_is_not_judged() {
        let most = Amount::Points(Points::ZERO);
        let rule = Rule::NewPoints(NewPoints { most });
        assert_eq!(under(rule, 500, "a turf-cutters 8"), []);
    }
}
