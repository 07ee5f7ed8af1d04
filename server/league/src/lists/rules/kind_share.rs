//! Kind share: how much of the cap goes into units of one kind.

use messages::{Message, findings, list_rules};

use crate::catalogue::key::KindKey;
use crate::lists::finding::{Finding, Measure};
use crate::lists::line::ListLine;
use crate::lists::list_facts::ListFacts;
use crate::lists::rules::{bounds, broken_bound};
use crate::points::Points;
use crate::share::Share;

/// "Points in the kind leader: at most 30 % of the cap", options included.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KindShare {
    pub unit_kind: KindKey,
    /// Least share of the cap, rounded up to whole points.
    pub least: Option<Share>,
    /// Largest share of the cap, rounded down to whole points.
    pub most: Option<Share>,
}

impl KindShare {
    pub(super) fn message(&self) -> Message {
        let bounds = bounds(self.least.as_ref(), self.most.as_ref());
        list_rules::list_rule_kind_share(&self.unit_kind, bounds)
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        let of_kind: Vec<&ListLine<'_>> = facts
            .lines
            .iter()
            .filter(|line| line.unit.is_some_and(|unit| unit.kind == self.unit_kind))
            .collect();
        let spent: Points = of_kind.iter().map(|line| line.points).sum();
        let cap = facts.cap;
        let least = self.least.map(|least| least.ceil_of(cap));
        let most = self.most.map(|most| most.floor_of(cap));
        if let Some((bound, limit)) = broken_bound(&spent, least, most) {
            let message = findings::finding_kind_share(spent, &self.unit_kind, bound, limit);
            findings.push(
                Finding::new("list.kind-share", message)
                    .measured(Measure::Points, limit.get(), spent.get())
                    .about(&self.unit_kind)
                    .entries(of_kind.iter().map(|line| &line.entry.key)),
            );
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::rules::Rule;
    use crate::lists::samples::{entries, kind, numbers, under};

    #[test]
    fn all_units_of_a_kind_count_together() {
        let rule = |least: Option<u32>, most: Option<u32>| {
            Rule::KindShare(KindShare {
                unit_kind: kind("leader"),
                least: least.map(Share::percent),
                most: most.map(Share::percent),
            })
        };
        let now = "a mire-speaker 1 reed-mask, b sump-midwife 1, c turf-cutters 8";
        assert_eq!(numbers(&under(rule(None, Some(30)), 450, now)), []);
        let findings = under(rule(None, Some(30)), 449, now);
        assert_eq!(numbers(&findings), [("list.kind-share", 134, 135)]);
        assert_eq!(entries(&findings[0]), ["a", "b"]);
        assert_eq!(numbers(&under(rule(Some(30), None), 450, now)), []);
        assert_eq!(
            numbers(&under(rule(Some(30), None), 451, now)),
            [("list.kind-share", 136, 135)]
        );
    }
}
