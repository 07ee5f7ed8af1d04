//! From list rules to JSON.

use league::catalogue::key::KindKey;
use league::lists::amount::{Amount, Count};
use league::lists::kinds::Kinds;
use league::lists::rules::{Counted, ListRule, Rule};
use league::lists::weeks::Weeks;

use super::{
    AmountDocument, CountDocument, CountedDocument, KindsDocument, ListRuleDocument, RuleDocument,
};
use crate::share::ShareDocument;

impl From<&ListRule> for ListRuleDocument {
    fn from(rule: &ListRule) -> Self {
        Self {
            rule: (&rule.rule).into(),
            weeks: (rule.weeks != Weeks::EVERY)
                .then(|| rule.weeks.iter().map(|week| week.number()).collect()),
            severity: rule.severity.into(),
        }
    }
}

impl From<&Rule> for RuleDocument {
    fn from(rule: &Rule) -> Self {
        match rule {
            Rule::MinimumSpend(rule) => Self::MinimumSpend {
                least: rule.least.into(),
            },
            Rule::LargestUnit(rule) => Self::LargestUnit {
                most: rule.most.into(),
            },
            Rule::KindCount(rule) => Self::KindCount {
                unit_kind: rule.kind.to_string(),
                least: rule.least.map(Into::into),
                most: rule.most.map(Into::into),
            },
            Rule::KindShare(rule) => Self::KindShare {
                unit_kind: rule.kind.to_string(),
                least: rule.least.map(Into::into),
                most: rule.most.map(Into::into),
            },
            Rule::Copies(rule) => Self::Copies {
                most: rule.most.into(),
                of: (&rule.of).into(),
            },
            Rule::BannedKeywords(rule) => Self::BannedKeywords {
                keywords: rule.keywords.iter().map(ToString::to_string).collect(),
            },
            Rule::ArmySize(rule) => Self::ArmySize {
                counted: match rule.counted {
                    Counted::Units => CountedDocument::Units,
                    Counted::Models => CountedDocument::Models,
                },
                least: rule.least,
                most: rule.most,
            },
            Rule::FactionLock(_) => Self::FactionLock {},
            Rule::CarryOver(rule) => Self::CarryOver {
                returning: rule.returning.into(),
                may_shrink: rule.may_shrink,
                may_drop_options: rule.may_drop_options,
            },
            Rule::SwapAllowance(rule) => Self::SwapAllowance {
                most: rule.most.into(),
            },
            Rule::NewPoints(rule) => Self::NewPoints {
                most: rule.most.into(),
            },
            Rule::NewUnits(rule) => Self::NewUnits { least: rule.least },
            Rule::PaintedShare(rule) => Self::PaintedShare {
                least: rule.least.into(),
            },
        }
    }
}

impl From<Amount> for AmountDocument {
    fn from(amount: Amount) -> Self {
        match amount {
            Amount::Points(points) => Self::Points {
                points: points.get(),
            },
            Amount::Share(share) => {
                let ShareDocument { part, whole } = share.into();
                Self::Share { part, whole }
            }
        }
    }
}

impl From<Count> for CountDocument {
    fn from(count: Count) -> Self {
        match count {
            Count::Fixed(count) => Self::Fixed { count },
            Count::Per(points) => Self::PerPoints {
                points: points.get(),
            },
        }
    }
}

impl From<&Kinds> for KindsDocument {
    fn from(kinds: &Kinds) -> Self {
        let keys = |kinds: &[KindKey]| kinds.iter().map(ToString::to_string).collect();
        match kinds {
            Kinds::Every => Self::Every,
            Kinds::Only(kinds) => Self::Only {
                unit_kinds: keys(kinds),
            },
            Kinds::Except(kinds) => Self::Except {
                unit_kinds: keys(kinds),
            },
        }
    }
}
