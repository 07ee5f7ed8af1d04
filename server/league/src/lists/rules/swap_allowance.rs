//! Swap allowance: how many of last week's points may leave.

use crate::lists::amount::Amount;
use crate::lists::facts::{Facts, Line};
use crate::lists::finding::{Finding, Measure};

/// "At most 20 % of last week's points leave", at last week's prices.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SwapAllowance {
    /// Points, or a share of last week's list (rounded down to whole points).
    pub most: Amount,
}

impl SwapAllowance {
    pub(super) fn sentence(&self) -> String {
        format!(
            "At most {} leave the list",
            self.most.of("last week's points")
        )
    }

    pub(super) fn check(&self, facts: &Facts<'_>, findings: &mut Vec<Finding>) {
        let Some(comparison) = &facts.comparison else {
            return;
        };
        let (most, left) = (
            self.most.most_of(comparison.total_before),
            comparison.left(),
        );
        if left > most {
            let losses: Vec<Line<'_>> = comparison.losses().collect();
            let names: Vec<&str> = losses.iter().map(Line::name).collect();
            let sentence = format!(
                "{left} of last week's {} points leave; at most {most} may. Leaving in whole or part: {}.",
                comparison.total_before,
                names.join(", ")
            );
            findings.push(
                Finding::new("list.swap", sentence)
                    .measured(Measure::Points, most.get(), left.get())
                    .entries(losses.iter().map(|line| &line.entry.key)),
            );
        }
    }
}
