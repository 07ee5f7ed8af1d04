//! The exact check of a list against its week: the total and every finding.

use std::collections::BTreeMap;

use crate::catalogue::Catalogue;
use crate::catalogue::key::FactionKey;
use crate::lists::army_list::{ArmyList, EntryKey};
use crate::lists::facts::Facts;
use crate::lists::finding::{Finding, Measure, Severity};
use crate::lists::rules::ListRule;
use crate::lists::sound;
use crate::points::Points;
use crate::week::WeekNo;

/// What a list of one player in one week is held against.
#[derive(Clone, Copy, Debug)]
pub struct Terms<'a> {
    /// The week.
    pub week: WeekNo,
    /// The points cap of the week for this player.
    pub cap: Points,
    /// The season's rules; those of other weeks are passed over.
    pub rules: &'a [ListRule],
    /// The faction the player declared for the season.
    pub faction: Option<&'a FactionKey>,
    /// The player's last list; rules from week to week wait until there is one.
    pub previous: Option<Previous<'a>>,
    /// Finished models of each entry; `None` when nothing is painted.
    pub painted: Option<&'a PaintedModels>,
}

/// Finished models by entry.
pub type PaintedModels = BTreeMap<EntryKey, u32>;

/// A player's last list with the catalogue version it was pinned to.
#[derive(Clone, Copy, Debug)]
pub struct Previous<'a> {
    /// The list.
    pub list: &'a ArmyList,
    /// Its own catalogue version: it keeps the points it was sealed with.
    pub catalogue: &'a Catalogue,
}

/// What the check says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Report {
    /// Points of the whole list.
    pub total: Points,
    /// Points left under the cap, zero when over it.
    pub left: Points,
    /// Everything found: entry by entry, then the cap, then the rules in the season's order.
    pub findings: Vec<Finding>,
}

impl Report {
    /// Whether the list may be sealed: remarks do not stop it.
    pub fn accepted(&self) -> bool {
        self.findings
            .iter()
            .all(|finding| finding.severity != Severity::Breach)
    }
}

/// Holds a list against its terms.
///
/// The list's points come from `catalogue`, the version its week is pinned to.
pub fn check(list: &ArmyList, catalogue: &Catalogue, terms: &Terms<'_>) -> Report {
    let facts = Facts::new(list, catalogue, terms);
    let mut findings = Vec::new();
    sound::check(&facts, &mut findings);
    check_cap(&facts, &mut findings);
    for rule in terms.rules {
        if rule.weeks.contains(terms.week) {
            let first = findings.len();
            rule.rule.check(&facts, &mut findings);
            for finding in findings.iter_mut().skip(first) {
                finding.severity = rule.severity;
            }
        }
    }
    Report {
        total: facts.total,
        left: terms.cap.left_after(facts.total),
        findings,
    }
}

fn check_cap(facts: &Facts<'_>, findings: &mut Vec<Finding>) {
    let (cap, total) = (facts.terms.cap, facts.total);
    if total > cap {
        let over = total.left_after(cap);
        findings.push(
            Finding::new(
                "list.over-cap",
                format!("The list has {total} points, {over} over the cap of {cap}."),
            )
            .measured(Measure::Points, cap.get(), total.get()),
        );
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::amount::Amount;
    use crate::lists::rules::{MinimumSpend, Rule};
    use crate::lists::samples::{catalogue, list, numbers, terms};
    use crate::lists::weeks::Weeks;

    fn short(weeks: Weeks, severity: Severity) -> ListRule {
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
        let this_week = Weeks::of(WeekNo::new(2));
        let next_week = Weeks::of(WeekNo::new(3));
        let rules = [
            short(next_week, Severity::Breach),
            short(this_week, Severity::Breach),
        ];
        let report = check(&list(""), &catalogue(), &terms(100, &rules));
        assert_eq!(numbers(&report.findings), [("list.minimum-spend", 100, 0)]);
        assert!(!report.accepted());
    }

    #[test]
    fn a_remark_does_not_stop_a_list() {
        let rules = [short(Weeks::EVERY, Severity::Remark)];
        let report = check(&list(""), &catalogue(), &terms(100, &rules));
        assert_eq!(report.findings.len(), 1);
        assert!(report.accepted());
    }

    #[test]
    fn a_rule_reads_with_its_weeks_and_weight() {
        let week = Weeks::of(WeekNo::new(5));
        assert_eq!(
            short(week, Severity::Remark).sentence(),
            "A list spends at least 100 points (week 5; only remarked upon)."
        );
        assert_eq!(
            short(Weeks::EVERY, Severity::Breach).sentence(),
            "A list spends at least 100 points."
        );
    }
}
