//! Painted share: how much of the list must be finished.

use crate::lists::facts::Facts;
use crate::lists::finding::{Finding, Measure};
use crate::lists::painted::painted_points;
use crate::share::Share;

/// "At least 50 % of the list's points are painted", each unit pro rata by its finished models.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PaintedShare {
    /// Least share of the list's own points; exact, nothing is rounded before the decision.
    pub least: Share,
}

impl PaintedShare {
    pub(super) fn sentence(&self) -> String {
        format!("At least {} of the list's points are painted", self.least)
    }

    pub(super) fn check(&self, facts: &Facts<'_>, findings: &mut Vec<Finding>) {
        let painted = painted_points(&facts.lines, facts.terms.painted);
        if painted.reaches(self.least, facts.total) {
            return;
        }
        let least = self.least.least_of(facts.total);
        let sentence = format!(
            "{} of {} points are painted; at least {least} ({}) must be.",
            painted.whole(),
            facts.total,
            self.least
        );
        findings.push(Finding::new("list.painted-share", sentence).measured(
            Measure::Points,
            least.get(),
            painted.whole().get(),
        ));
    }
}
