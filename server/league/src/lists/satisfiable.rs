//! Search for rules that no list can satisfy, run when a season is saved.

mod sum_set;
mod totals;

use messages::{Message, unsatisfiable};

use crate::catalogue::key::{FactionKey, Keyword, KindKey};
use crate::catalogue::{Catalogue, Faction};
use crate::lists::finding::Severity;
use crate::lists::rules::{ListRule, Rule};
use crate::points::Points;
use crate::week::WeekNo;

pub use totals::{LegalTotals, legal_totals};

/// Why the rules of a season cannot be met.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unsatisfiable {
    /// The rule of this index names a kind that no unit of the catalogue has.
    UnknownKind(usize, KindKey),
    /// The rule of this index names a keyword that no unit of the catalogue has.
    UnknownKeyword(usize, Keyword),
    /// The rule of this index allows fewer than it demands.
    Contradiction(usize),
    /// A faction has no legal list at all in this week.
    NoList(WeekNo, FactionKey),
    /// The least that must return from the week before is more than this week's cap.
    ReturnsTooMuch {
        /// The week whose cap is too low.
        week: WeekNo,
        faction: FactionKey,
        /// The least points that must return.
        least: Points,
        cap: Points,
    },
    /// The least this week's list must have is more than last week's largest and what may be new.
    GrowsTooSlowly {
        /// The week that cannot be reached.
        week: WeekNo,
        faction: FactionKey,
        /// The least points a legal list has this week.
        least: Points,
        /// The most points that can be reached.
        most: Points,
    },
}

impl Unsatisfiable {
    /// The week and the faction that cannot be, unless a rule is at fault in itself.
    pub fn week_and_faction(&self) -> Option<(WeekNo, &FactionKey)> {
        match self {
            Self::UnknownKind(..) | Self::UnknownKeyword(..) | Self::Contradiction(_) => None,
            Self::NoList(week, faction)
            | Self::ReturnsTooMuch { week, faction, .. }
            | Self::GrowsTooSlowly { week, faction, .. } => Some((*week, faction)),
        }
    }

    pub fn message(&self) -> Message {
        match self {
            Self::UnknownKind(_, kind) => unsatisfiable::unsatisfiable_kind(kind),
            Self::UnknownKeyword(_, keyword) => unsatisfiable::unsatisfiable_keyword(keyword),
            Self::Contradiction(_) => unsatisfiable::unsatisfiable_contradiction(),
            Self::NoList(week, faction) => unsatisfiable::unsatisfiable_no_list(week, faction),
            Self::ReturnsTooMuch {
                week,
                faction,
                least,
                cap,
            } => unsatisfiable::unsatisfiable_returns_too_much(week, least, faction, cap),
            Self::GrowsTooSlowly {
                week,
                faction,
                least,
                most,
            } => unsatisfiable::unsatisfiable_grows_too_slowly(week, faction, least, most),
        }
    }
}

/// Everything that cannot be met: by rule, then by faction and week.
///
/// What is found is certain. What is not found need not be possible: see [`legal_totals`] for the rules
/// that take no part in the search, and [`LegalTotals::NotExamined`].
pub fn find_unsatisfiable(
    rules: &[ListRule],
    caps: &[(WeekNo, Points)],
    catalogue: &Catalogue,
) -> Vec<Unsatisfiable> {
    let mut found: Vec<Unsatisfiable> = rules
        .iter()
        .enumerate()
        .flat_map(|(i, rule)| check_rule(i, &rule.rule, catalogue))
        .collect();
    for faction in catalogue.factions() {
        let weeks = caps
            .iter()
            .map(|&(week, cap)| (week, cap, legal_totals(faction, rules, week, cap)));
        let weeks: Vec<(WeekNo, Points, LegalTotals)> = weeks.collect();
        for (i, &(week, cap, now)) in weeks.iter().enumerate() {
            if now == LegalTotals::None {
                found.push(Unsatisfiable::NoList(week, faction.key().clone()));
            }
            let before = i.checked_sub(1).and_then(|before| weeks.get(before));
            if let (
                Some(&(_, _, LegalTotals::Between(least, most))),
                LegalTotals::Between(needed, _),
            ) = (before, now)
            {
                let last = (least, most);
                found.extend(check_growth(rules, faction, (week, cap, needed), last));
            }
        }
    }
    found
}

fn check_rule(i: usize, rule: &Rule, catalogue: &Catalogue) -> Vec<Unsatisfiable> {
    let units = || catalogue.factions().iter().flat_map(Faction::units);
    let kinds: &[KindKey] = match rule {
        Rule::KindCount(rule) => std::slice::from_ref(&rule.unit_kind),
        Rule::KindShare(rule) => std::slice::from_ref(&rule.unit_kind),
        Rule::Copies(rule) => rule.of.listed_kinds(),
        _ => &[],
    };
    let keywords: &[Keyword] = match rule {
        Rule::BannedKeywords(rule) => &rule.keywords,
        _ => &[],
    };
    let unknown_kinds = kinds
        .iter()
        .filter(|kind| !units().any(|unit| &unit.kind == *kind))
        .map(|kind| Unsatisfiable::UnknownKind(i, kind.clone()));
    let unknown_keywords = keywords
        .iter()
        .filter(|keyword| !units().any(|unit| unit.has_keyword(keyword)))
        .map(|keyword| Unsatisfiable::UnknownKeyword(i, keyword.clone()));
    let contradicts = match rule {
        Rule::ArmySize(rule) => rule
            .least
            .zip(rule.most)
            .is_some_and(|(least, most)| least > most),
        Rule::KindShare(rule) => rule
            .least
            .zip(rule.most)
            .is_some_and(|(least, most)| least > most),
        _ => false,
    };
    let contradiction = contradicts.then_some(Unsatisfiable::Contradiction(i));
    unknown_kinds
        .chain(unknown_keywords)
        .chain(contradiction)
        .collect()
}

/// What the rules from week to week make impossible, given the smallest and largest legal list
/// of the week before and the smallest of this week.
fn check_growth(
    rules: &[ListRule],
    faction: &Faction,
    (week, cap, needed): (WeekNo, Points, Points),
    (smallest, largest): (Points, Points),
) -> Vec<Unsatisfiable> {
    let active = rules
        .iter()
        .filter(|rule| rule.severity == Severity::Breach && rule.weeks.contains(week));
    let key = || faction.key().clone();
    let found = active.filter_map(|rule| match &rule.rule {
        Rule::CarryOver(rule) => {
            let least = rule.returning.ceil_of(smallest);
            (least > cap).then(|| Unsatisfiable::ReturnsTooMuch {
                week,
                faction: key(),
                least,
                cap,
            })
        }
        Rule::NewPoints(rule) => {
            let most = largest + rule.most.max_of(cap);
            (needed > most).then(|| Unsatisfiable::GrowsTooSlowly {
                week,
                faction: key(),
                least: needed,
                most,
            })
        }
        _ => None,
    });
    found.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::amount::{Amount, CountLimit};
    use crate::lists::kind_filter::KindFilter;
    use crate::lists::rules::{
        ArmySize, BannedKeywords, CarryOver, Copies, Counted, KindCount, KindShare, LargestUnit,
        MinimumSpend, NewPoints,
    };
    use crate::lists::samples::{catalogue, keyword, kind};
    use crate::share::Share;

    fn reasons(rules: Vec<Rule>, caps: &[u32]) -> Vec<String> {
        let rules: Vec<ListRule> = rules.into_iter().map(ListRule::every_week).collect();
        let weeks = (1..).filter_map(WeekNo::new);
        let caps: Vec<_> = weeks
            .zip(caps.iter().map(|&cap| Points::new(cap)))
            .collect();
        find_unsatisfiable(&rules, &caps, &catalogue())
            .iter()
            .map(|found| found.message().to_string())
            .collect()
    }

    fn spend(points: u32) -> Rule {
        let least = Amount::Points(Points::new(points));
        Rule::MinimumSpend(MinimumSpend { least })
    }

    #[test]
    fn no_rules_can_always_be_met() {
        assert_eq!(reasons(vec![], &[300, 400, 200]), [""; 0]);
    }

    #[test]
    fn a_minimum_spend_above_the_cap_is_found() {
        let moot = "In week 1 no list of sodwether-moot can be legal.";
        let steadings = "In week 1 no list of bramblestile-steadings can be legal.";
        assert_eq!(reasons(vec![spend(301)], &[300, 400]), [moot, steadings]);
    }

    #[test]
    fn a_faction_that_cannot_be_legal_is_named() {
        let leader = Rule::KindCount(KindCount {
            unit_kind: kind("leader"),
            least: Some(CountLimit::Fixed(1)),
            most: None,
        });
        assert_eq!(
            reasons(vec![leader], &[300]),
            ["In week 1 no list of bramblestile-steadings can be legal."]
        );
    }

    /// The levy comes as 50 to 100 points, its standard costs 10: one copy reaches 110.
    #[test]
    fn rules_that_only_clash_together_are_found() {
        let copies = Rule::Copies(Copies {
            most: CountLimit::Fixed(1),
            of: KindFilter::Every,
        });
        let levy = "In week 1 no list of bramblestile-steadings can be legal.";
        assert_eq!(reasons(vec![copies.clone(), spend(110)], &[300]), [""; 0]);
        assert_eq!(reasons(vec![copies.clone(), spend(111)], &[300]), [levy]);
        let largest = Rule::LargestUnit(LargestUnit {
            most: Amount::Points(Points::new(109)),
        });
        assert_eq!(
            reasons(vec![copies.clone(), spend(110), largest], &[300]),
            [levy]
        );
        let share = Rule::KindShare(KindShare {
            unit_kind: kind("line"),
            least: None,
            most: Share::new(1, 3),
        });
        assert_eq!(reasons(vec![copies, spend(101), share], &[300]), [levy]);
    }

    #[test]
    fn rules_that_name_what_nobody_has_or_contradict_themselves_are_found() {
        let rules = vec![
            Rule::Copies(Copies {
                most: CountLimit::Fixed(1),
                of: KindFilter::Except(vec![kind("wagon")]),
            }),
            Rule::BannedKeywords(BannedKeywords {
                keywords: vec![keyword("flying")],
            }),
            Rule::ArmySize(ArmySize {
                counted: Counted::Models,
                least: Some(10),
                most: Some(9),
            }),
        ];
        assert_eq!(
            reasons(rules, &[300]),
            [
                "No unit of the catalogue is of the kind wagon.",
                "No unit of the catalogue has the keyword flying.",
                "The rule allows fewer than it demands.",
            ]
        );
    }

    #[test]
    fn a_cap_that_falls_below_what_must_return_is_found() {
        let rules = || {
            let returning = Rule::CarryOver(CarryOver {
                returning: Share::percent(100),
                may_shrink: false,
                may_drop_options: false,
            });
            let most = Amount::Points(Points::new(50));
            let share = Amount::Share(Share::percent(90));
            let least = Rule::MinimumSpend(MinimumSpend { least: share });
            vec![returning, least, Rule::NewPoints(NewPoints { most })]
        };
        assert_eq!(reasons(rules(), &[300, 300, 340]), [""; 0]);
        let found = reasons(rules(), &[300, 260, 400]);
        assert_eq!(
            found.first().map(String::as_str),
            Some("In week 2 at least 270 points of sodwether-moot must return; the cap is 260.")
        );
        assert_eq!(
            found.get(1).map(String::as_str),
            Some(
                "In week 3 a list of sodwether-moot needs 360 points; at most 310 can be reached."
            )
        );
    }
}
