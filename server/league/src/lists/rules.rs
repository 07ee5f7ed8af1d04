//! The season's list rules: one file for each kind, with its parameters as data.
//!
//! To add a kind: write its file beside the others and name it in [`Rule`].

pub mod army_size;
pub mod banned_keywords;
pub mod carry_over;
pub mod copies;
pub mod faction_lock;
pub mod kind_count;
pub mod kind_share;
pub mod largest_unit;
pub mod minimum_spend;
pub mod new_points;
pub mod new_units;
pub mod option_budget;
pub mod painted_share;
pub mod swap_allowance;

use messages::{Message, Value, list_rules};

use crate::lists::finding::{Finding, Severity};
use crate::lists::list_facts::ListFacts;
use crate::lists::week_set::WeekSet;

pub use army_size::{ArmySize, Counted};
pub use banned_keywords::BannedKeywords;
pub use carry_over::CarryOver;
pub use copies::Copies;
pub use faction_lock::FactionLock;
pub use kind_count::KindCount;
pub use kind_share::KindShare;
pub use largest_unit::LargestUnit;
pub use minimum_spend::MinimumSpend;
pub use new_points::NewPoints;
pub use new_units::NewUnits;
pub use option_budget::OptionBudget;
pub use painted_share::PaintedShare;
pub use swap_allowance::SwapAllowance;

/// A rule of the season with the weeks it applies in and its weight.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListRule {
    pub rule: Rule,
    pub weeks: WeekSet,
    /// Whether a list against it is stopped or only remarked upon.
    pub severity: Severity,
}

impl ListRule {
    /// A breach in every week.
    pub fn every_week(rule: Rule) -> Self {
        Self {
            rule,
            weeks: WeekSet::EVERY,
            severity: Severity::Breach,
        }
    }

    /// Whether it matters which models are painted.
    pub fn needs_painted_models(&self) -> bool {
        matches!(self.rule, Rule::PaintedShare(_))
    }

    /// The rule as it is read to the players.
    pub fn message(&self) -> Message {
        let rule = self.rule.message();
        let weeks = || self.weeks.message();
        match (self.weeks == WeekSet::EVERY, self.severity) {
            (true, Severity::Breach) => list_rules::list_rule(rule),
            (true, Severity::Remark) => list_rules::list_rule_remark(rule),
            (false, Severity::Breach) => list_rules::list_rule_in_weeks(rule, weeks()),
            (false, Severity::Remark) => list_rules::list_rule_in_weeks_remark(rule, weeks()),
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
            pub fn message(&self) -> Message {
                match self {
                    $(Self::$kind(rule) => rule.message(),)+
                }
            }

            pub(super) fn check(&self, facts: &ListFacts<'_>, findings: &mut Vec<Finding>) {
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
    /// So much for options, by the models of a unit.
    OptionBudget,
    /// So many units of a kind.
    KindCount,
    /// So much of the cap in a kind.
    KindShare,
    /// So many of the same unit.
    Copies,
    /// No units of some keywords.
    BannedKeywords,
    /// So many units or models in all.
    ArmySize,
    /// One faction for the season.
    FactionLock,
    /// So much of last week's list returns.
    CarryOver,
    /// So much of last week's list may leave.
    SwapAllowance,
    /// So much may be new.
    NewPoints,
    /// So many units must be new or grown.
    NewUnits,
    /// So much of the list is painted.
    PaintedShare,
}

/// "exactly 1", "at least 1 and at most 2", "any number".
fn bounds<T: Clone + Into<Value> + PartialEq>(least: Option<&T>, most: Option<&T>) -> Message {
    match (least, most) {
        (Some(least), Some(most)) if least == most => list_rules::list_rule_exactly(least),
        (Some(least), Some(most)) => list_rules::list_rule_between(least, most),
        (Some(least), None) => list_rules::list_rule_at_least(least),
        (None, Some(most)) => list_rules::list_rule_at_most(most),
        (None, None) => list_rules::list_rule_any_number(),
    }
}

/// Which of two bounds a number breaks.
#[derive(Clone, Copy)]
enum Bound {
    Least,
    Most,
}

/// The key of a choice that a text makes.
impl From<Bound> for Value {
    fn from(bound: Bound) -> Self {
        match bound {
            Bound::Least => "least".into(),
            Bound::Most => "most".into(),
        }
    }
}

/// The bound that is broken, with its limit.
fn broken_bound<T: PartialOrd>(
    actual: &T,
    least: Option<T>,
    most: Option<T>,
) -> Option<(Bound, T)> {
    let least = least.filter(|least| actual < least);
    let most = most.filter(|most| actual > most);
    let least = least.map(|least| (Bound::Least, least));
    least.or(most.map(|most| (Bound::Most, most)))
}
