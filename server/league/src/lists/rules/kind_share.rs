//! Kind share: how much of the cap goes into units of one kind.

use crate::catalogue::key::KindKey;
use crate::lists::facts::{Facts, Line};
use crate::lists::finding::{Finding, Measure};
use crate::lists::rules::bounds;
use crate::points::Points;
use crate::share::Share;

/// "Points in the kind leader: at most 30 % of the cap", options included.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KindShare {
    /// The kind.
    pub kind: KindKey,
    /// Least share of the cap, rounded up to whole points.
    pub least: Option<Share>,
    /// Largest share of the cap, rounded down to whole points.
    pub most: Option<Share>,
}

impl KindShare {
    pub(super) fn sentence(&self) -> String {
        let bounds = bounds(self.least.as_ref(), self.most.as_ref());
        format!(
            "Points in the kind {}: {bounds} of the cap",
            self.kind.words()
        )
    }

    pub(super) fn check(&self, facts: &Facts<'_>, findings: &mut Vec<Finding>) {
        let of_kind: Vec<&Line<'_>> = facts
            .lines
            .iter()
            .filter(|line| line.unit.is_some_and(|unit| unit.kind == self.kind))
            .collect();
        let spent: Points = of_kind.iter().map(|line| line.points).sum();
        let cap = facts.terms.cap;
        let least = self.least.map(|least| ("at least", least.least_of(cap)));
        let most = self.most.map(|most| ("at most", most.most_of(cap)));
        let broken = least
            .filter(|&(_, limit)| spent < limit)
            .or(most.filter(|&(_, limit)| spent > limit));
        if let Some((bound, limit)) = broken {
            let sentence = format!(
                "The list spends {spent} points on the kind {}; {bound} {limit} this week.",
                self.kind.words()
            );
            findings.push(
                Finding::new("list.kind-share", sentence)
                    .measured(Measure::Points, limit.get(), spent.get())
                    .about(&self.kind)
                    .entries(of_kind.iter().map(|line| &line.entry.key)),
            );
        }
    }
}
