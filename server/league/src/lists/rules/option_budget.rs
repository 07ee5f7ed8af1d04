//! Option budget: how much a unit may spend on options, by its models. Common practice, no source.

use messages::{Message, findings, list_rules};

use crate::lists::finding::{Finding, Measure};
use crate::lists::line::option_points;
use crate::lists::list_facts::ListFacts;
use crate::points::Points;

/// "The options of a unit cost at most 5 points for each of its models."
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OptionBudget {
    /// Points for each model of the unit.
    pub most_per_model: u32,
}

impl OptionBudget {
    pub(super) fn message(&self) -> Message {
        list_rules::list_rule_option_budget(self.most_per_model)
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        for line in &facts.lines {
            let spent = line
                .unit
                .map_or(Points::ZERO, |unit| option_points(line.entry, unit))
                .get();
            let most = self.most_per_model.saturating_mul(line.entry.models);
            if spent > most {
                let models = line.entry.models;
                let message = findings::finding_option_budget(line.name(), spent, models, most);
                findings.push(
                    Finding::new("list.option-budget", message)
                        .measured(Measure::Points, most, spent)
                        .about(&line.entry.unit)
                        .entries([&line.entry.key]),
                );
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::rules::Rule;
    use crate::lists::samples::{entries, numbers, under};

    #[test]
    fn a_unit_may_spend_its_budget_for_each_of_its_models_and_no_more() {
        let hulks = "a bog-oak-hulks 2 root-armour, b bog-oak-hulks 2";
        let budget = |most_per_model| Rule::OptionBudget(OptionBudget { most_per_model });
        let within = under(budget(10), 300, hulks);
        assert_eq!(numbers(&within), []);
        let findings = under(budget(9), 300, hulks);
        assert_eq!(numbers(&findings), [("list.option-budget", 18, 20)]);
        assert_eq!(entries(&findings[0]), ["a"]);
    }
}
