//! Swap allowance: how many of last week's points may leave.

use messages::{Message, Value, findings, list_rules, values};

use crate::lists::amount::Amount;
use crate::lists::finding::{Finding, Measure};
use crate::lists::line::ListLine;
use crate::lists::list_facts::ListFacts;

/// "At most 20 % of last week's points leave", at last week's prices. What this week's version of
/// the catalogue no longer offers does not count ([`carry_over`](crate::lists::carry_over)).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SwapAllowance {
    /// Points, or a share of last week's list (rounded down to whole points).
    pub most: Amount,
}

impl SwapAllowance {
    pub(super) fn message(&self) -> Message {
        list_rules::list_rule_swap_allowance(self.most.message_of_last_week())
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        let Some(comparison) = &facts.comparison else {
            return;
        };
        let (most, left) = (
            self.most.max_of(comparison.returnable_points()),
            comparison.left_points(),
        );
        if left > most {
            let losses: Vec<ListLine<'_>> = comparison.losses().collect();
            let units = Value::joined(losses.iter().map(ListLine::name), values::comma);
            let message = findings::finding_swap(left, comparison.counted(), most, units);
            findings.push(
                Finding::new("list.swap", message)
                    .measured(Measure::Points, most.get(), left.get())
                    .entries(losses.iter().map(|line| &line.entry.key)),
            );
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::carry_over::PreviousList;
    use crate::lists::check::check;
    use crate::lists::rules::{ListRule, Rule};
    use crate::lists::samples::{after, catalogue, entries, list, numbers, repriced, terms};
    use crate::lists::terms::ListTerms;
    use crate::points::Points;
    use crate::share::Share;

    #[test]
    fn points_that_leave_count_whether_units_go_or_shrink() {
        let rule = |most| Rule::SwapAllowance(SwapAllowance { most });
        let before = "a turf-cutters 16, b stilt-waders 4, c fen-trebuchet 4, d bog-oak-hulks 3";
        let now = "a turf-cutters 14, c fen-trebuchet 4, d bog-oak-hulks 3, e rushlight-kin 12";
        let findings = after(before, rule(Amount::Points(Points::new(73))), 500, now);
        assert_eq!(numbers(&findings), [("list.swap", 73, 74)]);
        assert_eq!(entries(&findings[0]), ["a", "b"]);
        let share = Amount::Share(Share::new(74, 402).unwrap());
        assert_eq!(after(before, rule(share), 500, now), []);
    }

    #[test]
    fn what_leaves_is_counted_at_last_weeks_prices() {
        let (old, new) = (catalogue(), repriced("stilt-waders", 40));
        let before = list("a stilt-waders 4, b turf-cutters 8");
        let rules = [ListRule::every_week(Rule::SwapAllowance(SwapAllowance {
            most: Amount::Points(Points::ZERO),
        }))];
        let terms = ListTerms {
            previous: Some(PreviousList {
                list: &before,
                catalogue: &old,
            }),
            ..terms(500, &rules)
        };
        let findings = |now| check(&list(now), &new, &terms).findings;
        assert_eq!(
            numbers(&findings("b turf-cutters 8")),
            [("list.swap", 0, 60)]
        );
        assert_eq!(findings("a stilt-waders 4, b turf-cutters 8"), []);
    }
}
