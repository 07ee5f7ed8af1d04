//! New points: how much may be added to last week's list.

use crate::lists::amount::Amount;
use crate::lists::facts::Facts;
use crate::lists::finding::{Finding, Measure};
use crate::points::Points;

/// "At most 150 points are new since last week", at this week's prices.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NewPoints {
    /// Points, or a share of the cap (rounded down to whole points).
    pub most: Amount,
}

impl NewPoints {
    pub(super) fn sentence(&self) -> String {
        format!(
            "At most {} are new since last week",
            self.most.of("the cap")
        )
    }

    pub(super) fn check(&self, facts: &Facts<'_>, findings: &mut Vec<Finding>) {
        let Some(comparison) = &facts.comparison else {
            return;
        };
        let old: Points = comparison.pairs.iter().map(|pair| pair.old()).sum();
        let new = facts.total.left_after(old);
        let most = self.most.most_of(facts.terms.cap);
        if new > most {
            let fresh = comparison.pairs.iter().filter_map(|pair| {
                let now = pair.now?;
                (pair.old() < now.points).then_some(&now.entry.key)
            });
            let sentence = format!("{new} points are new since last week; at most {most} may be.");
            findings.push(
                Finding::new("list.new-points", sentence)
                    .measured(Measure::Points, most.get(), new.get())
                    .entries(fresh),
            );
        }
    }
}
