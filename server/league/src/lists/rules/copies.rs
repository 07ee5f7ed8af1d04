//! Copies: how often one and the same unit may be taken.

use crate::lists::amount::Count;
use crate::lists::facts::{Facts, Line};
use crate::lists::finding::{Finding, Measure};
use crate::lists::kinds::Kinds;

/// "The same unit (except of the kind line): at most 2 times."
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Copies {
    /// Most entries of one unit.
    pub most: Count,
    /// The kinds the rule is about.
    pub of: Kinds,
}

impl Copies {
    pub(super) fn sentence(&self) -> String {
        format!(
            "The same unit{}: at most {} in one list",
            self.of.after_unit(),
            self.most
        )
    }

    pub(super) fn check(&self, facts: &Facts<'_>, findings: &mut Vec<Finding>) {
        let most = self.most.at(facts.terms.cap);
        for (i, line) in facts.lines.iter().enumerate() {
            let Some(unit) = line.unit.filter(|unit| self.of.contains(&unit.kind)) else {
                continue;
            };
            let same = |other: &&Line<'_>| other.entry.unit == line.entry.unit;
            if facts.lines.iter().take(i).any(|other| same(&other)) {
                continue;
            }
            let count = facts.lines.iter().skip(i).filter(same).count();
            let count = u32::try_from(count).unwrap_or(u32::MAX);
            if count > most {
                let sentence = format!(
                    "{} is there {count} times; at most {most} this week.",
                    unit.name
                );
                let copies = facts.lines.iter().filter(same);
                findings.push(
                    Finding::new("list.copies", sentence)
                        .measured(Measure::Units, most, count)
                        .about(&unit.key)
                        .entries(copies.map(|line| &line.entry.key)),
                );
            }
        }
    }
}
