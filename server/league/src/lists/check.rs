//! The exact check of a list against its week: the total and every finding.

use messages::findings;

use crate::catalogue::Catalogue;
use crate::lists::army_list::ArmyList;
use crate::lists::catalogue_rules;
use crate::lists::finding::{Finding, Measure, Severity};
use crate::lists::list_facts::ListFacts;
use crate::lists::terms::ListTerms;
use crate::points::Points;

/// What the check says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CheckReport {
    /// Points of the whole list.
    pub total: Points,
    /// Points left under the cap, zero when over it.
    pub left: Points,
    /// Everything found: entry by entry, then the cap, then the rules in the season's order.
    pub findings: Vec<Finding>,
}

impl CheckReport {
    /// Whether the list may be sealed: remarks do not stop it.
    pub fn is_accepted(&self) -> bool {
        self.findings
            .iter()
            .all(|finding| finding.severity != Severity::Breach)
    }
}

/// Holds a list against its terms.
///
/// The list's points come from `catalogue`, the version its week is pinned to.
pub fn check(list: &ArmyList, catalogue: &Catalogue, terms: &ListTerms<'_>) -> CheckReport {
    let facts = terms.facts(list, catalogue);
    let mut findings = Vec::new();
    catalogue_rules::check(&facts, &mut findings);
    check_cap(&facts, &mut findings);
    for rule in terms.rules {
        if rule.weeks.contains(terms.week) {
            let first = findings.len();
            rule.rule.check(&facts, &mut findings);
            // A rule always reports breaches; how much they weigh is the season's decision.
            for finding in findings.iter_mut().skip(first) {
                finding.severity = rule.severity;
            }
        }
    }
    CheckReport {
        total: facts.total,
        left: terms.cap.saturating_sub(facts.total),
        findings,
    }
}

fn check_cap(facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
    let (cap, total) = (facts.cap, facts.total);
    if total > cap {
        let over = total.saturating_sub(cap);
        findings.push(
            Finding::new(
                "list.over-cap",
                findings::finding_over_cap(total, over, cap),
            )
            .measured(Measure::Points, cap.get(), total.get()),
        );
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::amount::Amount;
    use crate::lists::rules::{ListRule, MinimumSpend, Rule};
    use crate::lists::samples::{catalogue, list, numbers, terms};
    use crate::lists::week_set::WeekSet;
    use crate::week::WeekNo;

    fn short(weeks: WeekSet, severity: Severity) -> ListRule {
        let least = Amount::Points(Points::new(100));
        let rule = Rule::MinimumSpend(MinimumSpend { least });
        ListRule {
            rule,
            weeks,
            severity,
        }
    }

    #[test]
    fn a_rule_speaks_in_its_own_weeks_only() {
        let this_week = WeekSet::from_weeks(WeekNo::new(2));
        let next_week = WeekSet::from_weeks(WeekNo::new(3));
        let rules = [
            short(next_week, Severity::Breach),
            short(this_week, Severity::Breach),
        ];
        let report = check(&list(""), &catalogue(), &terms(100, &rules));
        assert_eq!(numbers(&report.findings), [("list.minimum-spend", 100, 0)]);
        assert!(!report.is_accepted());
    }

    #[test]
    fn a_remark_does_not_stop_a_list() {
        let rules = [short(WeekSet::EVERY, Severity::Remark)];
        let report = check(&list(""), &catalogue(), &terms(100, &rules));
        assert_eq!(report.findings.len(), 1);
        assert!(report.is_accepted());
    }

    #[test]
    fn a_rule_reads_with_its_weeks_and_weight() {
        let week = WeekSet::from_weeks(WeekNo::new(5));
        assert_eq!(
            short(week, Severity::Remark).message().to_string(),
            "A list spends at least 100 points (week 5; only remarked upon)."
        );
        assert_eq!(
            short(WeekSet::EVERY, Severity::Breach)
                .message()
                .to_string(),
            "A list spends at least 100 points."
        );
    }
}
