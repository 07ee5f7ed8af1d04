//! Largest unit: no single unit may eat the whole cap.

use messages::{Message, findings, list_rules};

use crate::lists::amount::Amount;
use crate::lists::finding::{Finding, Measure};
use crate::lists::list_facts::ListFacts;

/// "No single unit costs more than 40 % of the cap", options included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LargestUnit {
    /// Points, or a share of the cap (rounded down to whole points).
    pub most: Amount,
}

impl LargestUnit {
    pub(super) fn message(&self) -> Message {
        list_rules::list_rule_largest_unit(self.most.message_of_cap())
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        let most = self.most.max_of(facts.cap);
        for line in facts.lines.iter().filter(|line| line.points > most) {
            let message = findings::finding_largest_unit(line.name(), line.points, most);
            findings.push(
                Finding::new("list.largest-unit", message)
                    .measured(Measure::Points, most.get(), line.points.get())
                    .about(&line.entry.unit)
                    .entries([&line.entry.key]),
            );
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::rules::Rule;
    use crate::lists::samples::{entries, numbers, under};
    use crate::share::Share;

    #[test]
    fn options_count_towards_the_unit_and_the_limit_itself_is_allowed() {
        let rule = Rule::LargestUnit(LargestUnit {
            most: Amount::Share(Share::percent(40)),
        });
        let hulks = "a bog-oak-hulks 2 root-armour, b bog-oak-hulks 2";
        assert_eq!(numbers(&under(rule.clone(), 275, hulks)), []);
        let findings = under(rule, 274, hulks);
        assert_eq!(numbers(&findings), [("list.largest-unit", 109, 110)]);
        assert_eq!(entries(&findings[0]), ["a"]);
    }
}
