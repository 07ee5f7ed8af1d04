//! The season's list rules. Each kind is one file with its parameters as data.
//!
//! To add a kind: write its file beside the others and name it in [`Rule`].

pub mod largest_unit;
pub mod minimum_spend;

use crate::lists::facts::Facts;
use crate::lists::finding::{Finding, Severity};
use crate::lists::weeks::Weeks;

pub use largest_unit::LargestUnit;
pub use minimum_spend::MinimumSpend;

/// A rule of the season with the weeks it applies in and its weight.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListRule {
    /// What is demanded.
    pub rule: Rule,
    /// When.
    pub weeks: Weeks,
    /// Whether a list against it is stopped or only remarked upon.
    pub severity: Severity,
}

impl ListRule {
    /// A breach in every week.
    pub fn every_week(rule: Rule) -> Self {
        Self {
            rule,
            weeks: Weeks::EVERY,
            severity: Severity::Breach,
        }
    }

    /// The rule as a sentence for the players' page.
    pub fn sentence(&self) -> String {
        let rule = self.rule.sentence();
        match (self.weeks == Weeks::EVERY, self.severity) {
            (true, Severity::Breach) => format!("{rule}."),
            (true, Severity::Remark) => format!("{rule} (only remarked upon)."),
            (false, Severity::Breach) => format!("{rule} ({}).", self.weeks),
            (false, Severity::Remark) => format!("{rule} ({}; only remarked upon).", self.weeks),
        }
    }
}

macro_rules! kinds {
    ($($(#[$doc:meta])* $kind:ident),+ $(,)?) => {
        /// The kinds of list rule.
        #[derive(Clone, Debug, PartialEq, Eq)]
        pub enum Rule {
            $($(#[$doc])* $kind($kind),)+
        }

        impl Rule {
            /// What the rule demands, without weeks and full stop.
            pub fn sentence(&self) -> String {
                match self {
                    $(Self::$kind(rule) => rule.sentence(),)+
                }
            }

            pub(super) fn check(&self, facts: &Facts<'_>, findings: &mut Vec<Finding>) {
                match self {
                    $(Self::$kind(rule) => rule.check(facts, findings),)+
                }
            }
        }
    };
}

kinds! {
    /// A list spends at least so much.
    MinimumSpend,
    /// No single unit costs more than so much.
    LargestUnit,
}
