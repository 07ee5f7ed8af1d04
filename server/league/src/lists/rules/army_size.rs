//! Army size: how many units or models a list has in all, mostly for the sake of time.

use crate::lists::finding::{Finding, Measure};
use crate::lists::list_facts::ListFacts;
use crate::lists::rules::bounds;

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

impl ArmySize {
    pub(super) fn sentence(&self) -> String {
        let bounds = bounds(self.least.as_ref(), self.most.as_ref());
        match self.counted {
            Counted::Units => format!("Units in the list: {bounds}"),
            Counted::Models => format!("Models in the list: {bounds}"),
        }
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        let (measure, noun, count) = match self.counted {
            Counted::Units => (
                Measure::Units,
                "units",
                u32::try_from(facts.lines.len()).unwrap_or(u32::MAX),
            ),
            Counted::Models => (
                Measure::Models,
                "models",
                facts
                    .lines
                    .iter()
                    .fold(0_u32, |sum, line| sum.saturating_add(line.entry.models)),
            ),
        };
        let least = self.least.map(|least| ("at least", least));
        let most = self.most.map(|most| ("at most", most));
        let broken = least
            .filter(|&(_, limit)| count < limit)
            .or(most.filter(|&(_, limit)| count > limit));
        if let Some((bound, limit)) = broken {
            let sentence = format!("The list has {count} {noun}; {bound} {limit} this week.");
            findings.push(Finding::new("list.army-size", sentence).measured(measure, limit, count));
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
