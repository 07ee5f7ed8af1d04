//! Army size: how many units or models a list has in all, mostly for the sake of time.

use messages::{Message, Value, findings, list_rules};

use crate::lists::finding::{Finding, Measure};
use crate::lists::list_facts::ListFacts;
use crate::lists::rules::{bounds, broken_bound};

/// "Models in the list: at most 80."
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ArmySize {
    pub counted: Counted,
    pub least: Option<u32>,
    pub most: Option<u32>,
}

/// What an army size counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Counted {
    /// Entries of the list.
    Units,
    /// Models of all entries.
    Models,
}

/// The key of a choice that a text makes.
impl From<Counted> for Value {
    fn from(counted: Counted) -> Self {
        match counted {
            Counted::Units => "units".into(),
            Counted::Models => "models".into(),
        }
    }
}

impl ArmySize {
    pub(super) fn message(&self) -> Message {
        let bounds = bounds(self.least.as_ref(), self.most.as_ref());
        list_rules::list_rule_army_size(self.counted, bounds)
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        let (measure, count) = match self.counted {
            Counted::Units => (
                Measure::Units,
                u32::try_from(facts.lines.len()).unwrap_or(u32::MAX),
            ),
            Counted::Models => (
                Measure::Models,
                facts
                    .lines
                    .iter()
                    .fold(0_u32, |sum, line| sum.saturating_add(line.entry.models)),
            ),
        };
        if let Some((bound, limit)) = broken_bound(&count, self.least, self.most) {
            let message = findings::finding_army_size(count, self.counted, bound, limit);
            findings.push(Finding::new("list.army-size", message).measured(measure, limit, count));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::rules::Rule;
    use crate::lists::samples::{numbers, under};

    #[test]
    fn units_and_models_have_a_least_and_a_most() {
        let rule = |counted| {
            Rule::ArmySize(ArmySize {
                counted,
                least: Some(2),
                most: Some(12),
            })
        };
        assert_eq!(
            numbers(&under(rule(Counted::Units), 500, "a turf-cutters 8")),
            [("list.army-size", 2, 1)]
        );
        let now = "a turf-cutters 8, b stilt-waders 4";
        assert_eq!(under(rule(Counted::Models), 500, now), []);
        let now = "a turf-cutters 8, b stilt-waders 5";
        assert_eq!(
            numbers(&under(rule(Counted::Models), 500, now)),
            [("list.army-size", 12, 13)]
        );
    }
}
