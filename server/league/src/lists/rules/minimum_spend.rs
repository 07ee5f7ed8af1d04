//! Minimum spend: a list may not stay too far below the cap.

use messages::{Message, findings, list_rules};

use crate::lists::amount::Amount;
use crate::lists::finding::{Finding, Measure};
use crate::lists::list_facts::ListFacts;

/// "A list spends at least 90 % of the cap."
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MinimumSpend {
    /// Points, or a share of the cap (rounded up to whole points).
    pub least: Amount,
}

impl MinimumSpend {
    pub(super) fn message(&self) -> Message {
        list_rules::list_rule_minimum_spend(self.least.message_of_cap())
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        let (least, total) = (self.least.min_of(facts.cap), facts.total);
        if total < least {
            let short = least.saturating_sub(total);
            let message = findings::finding_minimum_spend(total, short, least);
            findings.push(Finding::new("list.minimum-spend", message).measured(
                Measure::Points,
                least.get(),
                total.get(),
            ));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::rules::Rule;
    use crate::lists::samples::{numbers, under};
    use crate::points::Points;
    use crate::share::Share;

    #[test]
    fn a_list_one_point_short_of_the_least_spend_is_told() {
        let rule = |least| Rule::MinimumSpend(MinimumSpend { least });
        let share = rule(Amount::Share(Share::percent(95)));
        let now = "a turf-cutters 16, b stilt-waders 5";
        assert_eq!(numbers(&under(share.clone(), 196, now)), []);
        assert_eq!(
            numbers(&under(share, 197, now)),
            [("list.minimum-spend", 188, 187)]
        );
        let points = rule(Amount::Points(Points::new(187)));
        assert_eq!(numbers(&under(points, 200, now)), []);
    }
}
