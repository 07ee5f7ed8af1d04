//! Copies: how often one and the same unit may be taken.

use messages::{Message, Value, findings, list_rules, values};

use crate::lists::amount::CountLimit;
use crate::lists::finding::{Finding, Measure};
use crate::lists::kind_filter::KindFilter;
use crate::lists::line::ListLine;
use crate::lists::list_facts::ListFacts;

/// "The same unit (except of the kind line): at most 2 times."
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Copies {
    /// Most entries of one unit.
    pub most: CountLimit,
    /// The kinds the rule is about.
    pub of: KindFilter,
}

impl Copies {
    pub(super) fn message(&self) -> Message {
        let named = || Value::joined(self.of.listed_kinds(), values::or);
        match self.of {
            KindFilter::Every => list_rules::list_rule_copies(self.most),
            KindFilter::Only(_) => list_rules::list_rule_copies_of(named(), self.most),
            KindFilter::Except(_) => list_rules::list_rule_copies_except_of(named(), self.most),
        }
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        let most = self.most.for_cap(facts.cap);
        for (i, line) in facts.lines.iter().enumerate() {
            let Some(unit) = line.unit.filter(|unit| self.of.contains(&unit.kind)) else {
                continue;
            };
            let same = |other: &&ListLine<'_>| other.entry.unit == line.entry.unit;
            if facts.lines.iter().take(i).any(|other| same(&other)) {
                continue;
            }
            let count = facts.lines.iter().skip(i).filter(same).count();
            let count = u32::try_from(count).unwrap_or(u32::MAX);
            if count > most {
                let message = findings::finding_copies(&unit.name, count, most);
                let copies = facts.lines.iter().filter(same);
                findings.push(
                    Finding::new("list.copies", message)
                        .measured(Measure::Units, most, count)
                        .about(&unit.key)
                        .entries(copies.map(|line| &line.entry.key)),
                );
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::rules::Rule;
    use crate::lists::samples::{entries, kind, numbers, under};

    fn copies(of: KindFilter) -> Rule {
        let most = CountLimit::Fixed(1);
        Rule::Copies(Copies { most, of })
    }

    #[test]
    fn the_same_unit_may_be_there_so_often_and_a_kind_may_be_excepted() {
        let now = "a turf-cutters 8, b stilt-waders 4, c turf-cutters 9, d stilt-waders 4";
        let findings = under(copies(KindFilter::Every), 500, now);
        assert_eq!(
            numbers(&findings),
            [("list.copies", 1, 2), ("list.copies", 1, 2)]
        );
        assert_eq!(entries(&findings[0]), ["a", "c"]);
        assert_eq!(entries(&findings[1]), ["b", "d"]);
        let but_line = under(copies(KindFilter::Except(vec![kind("line")])), 500, now);
        assert_eq!(entries(&but_line[0]), ["b", "d"]);
        let line_only = under(copies(KindFilter::Only(vec![kind("line")])), 500, now);
        assert_eq!(entries(&line_only[0]), ["a", "c"]);
    }
}
