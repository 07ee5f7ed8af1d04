//! Kind count: how many units of a kind a list has, fixed or growing with the cap.

use messages::{Message, findings, list_rules};

use crate::catalogue::key::KindKey;
use crate::lists::amount::CountLimit;
use crate::lists::finding::{Finding, Measure};
use crate::lists::line::ListLine;
use crate::lists::list_facts::ListFacts;
use crate::lists::rules::{bounds, broken_bound};

/// "A list has at least 1 per 250 points of the cap units of the kind line."
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KindCount {
    pub unit_kind: KindKey,
    /// Fewest units of it.
    pub least: Option<CountLimit>,
    /// Most units of it.
    pub most: Option<CountLimit>,
}

impl KindCount {
    pub(super) fn message(&self) -> Message {
        let bounds = bounds(self.least.as_ref(), self.most.as_ref());
        list_rules::list_rule_kind_count(&self.unit_kind, bounds)
    }

    pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
        let of_kind: Vec<&ListLine<'_>> = facts
            .lines
            .iter()
            .filter(|line| line.unit.is_some_and(|unit| unit.kind == self.unit_kind))
            .collect();
        let count = u32::try_from(of_kind.len()).unwrap_or(u32::MAX);
        let cap = facts.cap;
        let least = self.least.map(|least| least.for_cap(cap));
        let most = self.most.map(|most| most.for_cap(cap));
        if let Some((bound, limit)) = broken_bound(&count, least, most) {
            let message = findings::finding_kind_count(count, &self.unit_kind, bound, limit);
            findings.push(
                Finding::new("list.kind-count", message)
                    .measured(Measure::Units, limit, count)
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
    use crate::points::Points;

    #[test]
    fn the_count_of_a_kind_may_grow_with_the_cap() {
        let rule = Rule::KindCount(KindCount {
            unit_kind: kind("line"),
            least: Some(CountLimit::Per(Points::new(250))),
            most: Some(CountLimit::Fixed(3)),
        });
        let two = "a turf-cutters 8, b rushlight-kin 6, c stilt-waders 4";
        assert_eq!(numbers(&under(rule.clone(), 749, two)), []);
        assert_eq!(
            numbers(&under(rule.clone(), 750, two)),
            [("list.kind-count", 3, 2)]
        );
        let four = "a turf-cutters 8, b turf-cutters 8, c turf-cutters 8, d turf-cutters 8";
        let findings = under(rule, 500, four);
        assert_eq!(numbers(&findings), [("list.kind-count", 3, 4)]);
        assert_eq!(entries(&findings[0]), ["a", "b", "c", "d"]);
    }

    #[test]
    fn it_reads_as_a_sentence() {
        let rule = |least, most| {
            let unit_kind = kind("line");
            KindCount {
                unit_kind,
                least,
                most,
            }
            .message()
            .to_string()
        };
        let one = Some(CountLimit::Fixed(1));
        assert_eq!(rule(one, one), "Units of the kind line: exactly 1");
        assert_eq!(
            rule(
                Some(CountLimit::Per(Points::new(250))),
                Some(CountLimit::Fixed(3))
            ),
            "Units of the kind line: at least 1 per 250 points of the cap and at most 3"
        );
    }
}
