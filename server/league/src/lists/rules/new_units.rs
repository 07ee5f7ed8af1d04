//! New units: something must join or grow every week, also for a finished army.

use messages::{Message, findings, list_rules};

use crate::lists::finding::{Finding, Measure};
use crate::lists::list_facts::ListFacts;

/// "At least 1 unit is new or has grown since last week."
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NewUnits {
    /// Fewest units that are new or have more models than last week.
    pub least: u32,
}

impl NewUnits {
    pub(super) fn message(&self) -> Message {
        list_rules::list_rule_new_units(self.least)
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        let Some(comparison) = &facts.comparison else {
            return;
        };
        let count = comparison
            .pairs
            .iter()
            .filter(|pair| match (pair.before, pair.now) {
                (Some(before), Some(now)) => now.entry.models > before.entry.models,
                (None, Some(_)) => true,
                _ => false,
            })
            .count();
        let count = u32::try_from(count).unwrap_or(u32::MAX);
        if count < self.least {
            let message = findings::finding_new_units(count, self.least);
            findings.push(Finding::new("list.new-units", message).measured(
                Measure::Units,
                self.least,
                count,
            ));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::rules::Rule;
    use crate::lists::samples::{after, numbers};

    #[test]
    fn a_grown_unit_counts_as_new_and_an_option_does_not() {
        let rule = Rule::NewUnits(NewUnits { least: 2 });
        let before = "a turf-cutters 8, b stilt-waders 4";
        let now = "a turf-cutters 9, b stilt-waders 4, c rushlight-kin 6";
        assert_eq!(after(before, rule.clone(), 500, now), []);
        let now = "a turf-cutters 9, b stilt-waders 4 eel-nets";
        assert_eq!(
            numbers(&after(before, rule, 500, now)),
            [("list.new-units", 2, 1)]
        );
    }
}
