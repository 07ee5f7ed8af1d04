//! From list rules to JSON.

use league::catalogue::key::KindKey;
use league::lists::amount::{Amount, CountLimit};
use league::lists::kind_filter::KindFilter;
use league::lists::rules::{Counted, ListRule, Rule};
use league::lists::week_set::WeekSet;

use super::{
    AmountDocument, CountDocument, CountedDocument, KindsDocument, ListRuleDocument, RuleDocument,
};
use crate::share::ShareDocument;

impl From<&ListRule> for ListRuleDocument {
    fn from(rule: &ListRule) -> Self {
        Self {
            rule: (&rule.rule).into(),
            weeks: (rule.weeks != WeekSet::EVERY)
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

impl From<CountLimit> for CountDocument {
    fn from(count: CountLimit) -> Self {
        match count {
            CountLimit::Fixed(count) => Self::Fixed { count },
            CountLimit::Per(points) => Self::PerPoints {
                points: points.get(),
            },
        }
    }
}

impl From<&KindFilter> for KindsDocument {
    fn from(kinds: &KindFilter) -> Self {
        let keys = |kinds: &[KindKey]| kinds.iter().map(ToString::to_string).collect();
        match kinds {
            KindFilter::Every => Self::Every,
            KindFilter::Only(kinds) => Self::Only {
                unit_kinds: keys(kinds),
            },
            KindFilter::Except(kinds) => Self::Except {
                unit_kinds: keys(kinds),
            },
        }
    }
}
