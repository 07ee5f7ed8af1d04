//! The totals that legal lists of a faction can have in one week.
//!
//! Exact for the rules on one list: cap, minimum spend, largest unit, kind counts and shares,
//! copies, banned keywords and the catalogue's own limits. The sums a unit, a kind and at last
//! the list can make are worked out one after the other, so nothing is tried twice. Rules on the
//! size of the whole army, on paint and from week to week take no part.

use std::collections::BTreeSet;

use super::sum_set::SumSet;
use crate::catalogue::Faction;
use crate::catalogue::key::{GroupKey, KindKey};
use crate::catalogue::unit::{Unit, UnitOption};
use crate::lists::army_list::MAX_ENTRIES;
use crate::lists::finding::Severity;
use crate::lists::rules::{ListRule, Rule};
use crate::points::Points;
use crate::week::WeekNo;

/// Most steps that are taken for one faction and week. A demo faction takes some 100,000.
const MAX_STEPS: usize = 400_000_000;

/// The range of totals of legal lists.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LegalTotals {
    /// There is no legal list.
    None,
    /// Legal lists have totals between these, both reached.
    Between(Points, Points),
    /// Too many sums to look at.
    NotExamined,
}

/// The totals of the legal lists of a faction.
pub fn legal_totals(
    faction: &Faction,
    rules: &[ListRule],
    week: WeekNo,
    cap: Points,
) -> LegalTotals {
    let rules: Vec<&Rule> = rules
        .iter()
        .filter(|rule| rule.severity == Severity::Breach && rule.weeks.contains(week))
        .map(|rule| &rule.rule)
        .collect();
    let demand = Demand { rules, cap };
    let mut kinds: Vec<&KindKey> = faction.units().iter().map(|unit| &unit.kind).collect();
    kinds.extend(demand.kinds_counted());
    let kinds: BTreeSet<&KindKey> = kinds.into_iter().collect();
    let mut sums = SumSet::only_zero(size(cap));
    let mut steps = 0;
    for kind in kinds {
        let of_kind = demand.kind_sums(faction, kind, &mut steps);
        steps += of_kind.len() * of_kind.word_count();
        if steps > MAX_STEPS {
            return LegalTotals::NotExamined;
        }
        sums = sums.pairwise_sums(&of_kind);
    }
    match sums.within(size(demand.least()), size(cap)).min_and_max() {
        None => LegalTotals::None,
        Some((least, most)) => LegalTotals::Between(points(least), points(most)),
    }
}

fn size(points: Points) -> usize {
    usize::try_from(points.get()).unwrap_or(usize::MAX)
}

fn points(sum: usize) -> Points {
    Points::new(u32::try_from(sum).unwrap_or(u32::MAX))
}

/// What the rules of a week demand of one list.
struct Demand<'a> {
    rules: Vec<&'a Rule>,
    cap: Points,
}

impl<'a> Demand<'a> {
    fn least(&self) -> Points {
        let least = self.rules.iter().filter_map(|rule| match rule {
            Rule::MinimumSpend(rule) => Some(rule.least.min_of(self.cap)),
            _ => None,
        });
        least.max().unwrap_or_default()
    }

    fn kinds_counted(&self) -> impl Iterator<Item = &'a KindKey> {
        self.rules.iter().filter_map(|rule| match rule {
            Rule::KindCount(rule) => Some(&rule.unit_kind),
            Rule::KindShare(rule) => Some(&rule.unit_kind),
            _ => None,
        })
    }

    /// Fewest and most units of a kind.
    fn count(&self, kind: &KindKey) -> (usize, usize) {
        let mut bounds = (0, MAX_ENTRIES);
        for rule in &self.rules {
            if let Rule::KindCount(rule) = rule
                && &rule.unit_kind == kind
            {
                let at = |count: crate::lists::amount::CountLimit| {
                    usize::try_from(count.for_cap(self.cap)).unwrap_or(usize::MAX)
                };
                bounds.0 = bounds.0.max(rule.least.map_or(0, at));
                bounds.1 = bounds.1.min(rule.most.map_or(MAX_ENTRIES, at));
            }
        }
        bounds
    }

    /// Least and most points in a kind.
    fn share(&self, kind: &KindKey) -> (Points, Points) {
        let mut bounds = (Points::ZERO, self.cap);
        for rule in &self.rules {
            if let Rule::KindShare(rule) = rule
                && &rule.unit_kind == kind
            {
                let least = rule
                    .least
                    .map_or(Points::ZERO, |share| share.ceil_of(self.cap));
                let most = rule.most.map_or(self.cap, |share| share.floor_of(self.cap));
                bounds = (bounds.0.max(least), bounds.1.min(most));
            }
        }
        bounds
    }

    /// Most entries of one unit; none when it is banned.
    fn copies(&self, unit: &Unit) -> usize {
        let mut most = unit.most_per_army;
        for rule in &self.rules {
            let limit = match rule {
                Rule::Copies(rule) if rule.of.contains(&unit.kind) => rule.most.for_cap(self.cap),
                Rule::BannedKeywords(rule) if rule.keywords.iter().any(|k| unit.has_keyword(k)) => {
                    0
                }
                _ => continue,
            };
            most = Some(most.map_or(limit, |most| most.min(limit)));
        }
        most.map_or(MAX_ENTRIES, |most| {
            usize::try_from(most).map_or(MAX_ENTRIES, |most| most.min(MAX_ENTRIES))
        })
    }

    /// What one entry of a unit can cost.
    fn prices(&self, unit: &Unit) -> SumSet {
        let largest = self.rules.iter().filter_map(|rule| match rule {
            Rule::LargestUnit(rule) => Some(rule.most.max_of(self.cap)),
            _ => None,
        });
        let largest = largest.min().unwrap_or(self.cap).min(self.cap);
        let mut prices = SumSet::empty(size(self.cap));
        for offered in &unit.sizes {
            let mut body = SumSet::empty(size(self.cap));
            body.insert(size(offered.points));
            let sums = with_options(body, unit, offered.models);
            prices.insert_shifted(&sums.within(0, size(largest)), 0);
        }
        prices
    }

    /// What all units of a kind together can cost.
    fn kind_sums(&self, faction: &Faction, kind: &KindKey, steps: &mut usize) -> SumSet {
        let (fewest, most) = self.count(kind);
        let (least, largest) = self.share(kind);
        let cap = size(self.cap);
        // Counts beyond the fewest are alike when there is no most.
        let kept = if most < MAX_ENTRIES {
            most
        } else {
            fewest.min(MAX_ENTRIES)
        };
        let mut by_count = vec![SumSet::empty(cap); kept + 1];
        if let Some(none) = by_count.first_mut() {
            none.insert(0);
        }
        let saturates = most >= MAX_ENTRIES;
        for unit in faction.units().iter().filter(|unit| &unit.kind == kind) {
            let prices: Vec<usize> = self.prices(unit).iter().collect();
            let copies = if prices.is_empty() {
                0
            } else {
                self.copies(unit)
            };
            add_unit(&mut by_count, &prices, copies, saturates, steps);
        }
        let mut sums = SumSet::empty(cap);
        for of_count in by_count.iter().skip(fewest) {
            sums.insert_shifted(of_count, 0);
        }
        sums.within(size(least), size(largest))
    }
}

/// Adds up to `copies` of a unit to every count of units. With `saturates` the last count also
/// stands for all higher ones.
fn add_unit(
    by_count: &mut [SumSet],
    prices: &[usize],
    copies: usize,
    saturates: bool,
    steps: &mut usize,
) {
    let mut layer = by_count.to_vec();
    for _ in 0..copies {
        let mut next: Vec<SumSet> = layer.iter().map(|sums| SumSet::empty(sums.cap())).collect();
        let last = layer.len() - 1;
        for (count, sums) in layer.iter().enumerate() {
            let to = if saturates {
                (count + 1).min(last)
            } else {
                count + 1
            };
            if let Some(target) = next.get_mut(to) {
                for &price in prices {
                    target.insert_shifted(sums, price);
                }
            }
            *steps += prices.len() * sums.word_count();
        }
        let mut grown = false;
        for (own, added) in by_count.iter_mut().zip(&next) {
            grown |= own.insert_shifted(added, 0);
        }
        if !grown || *steps > MAX_STEPS {
            return;
        }
        layer = next;
    }
}

/// Every choice of options on top of a body: one of each group at most, each within its limit.
fn with_options(body: SumSet, unit: &Unit, models: u32) -> SumSet {
    let takings = |sums: &SumSet, option: &UnitOption| {
        let price = size(option.price.for_models(models));
        let mut all = sums.clone();
        for taken in 1..=usize::try_from(option.limit).unwrap_or(usize::MAX) {
            let more = price.saturating_mul(taken);
            if price == 0 || more > sums.cap() {
                break;
            }
            all.insert_shifted(sums, more);
        }
        all
    };
    let mut sums = body;
    for option in unit.options.iter().filter(|option| option.group.is_none()) {
        sums = takings(&sums, option);
    }
    let groups: BTreeSet<&GroupKey> = unit
        .options
        .iter()
        .filter_map(|option| option.group.as_ref())
        .collect();
    for group in groups {
        let before = sums.clone();
        for option in unit
            .options
            .iter()
            .filter(|option| option.group.as_ref() == Some(group))
        {
            sums.insert_shifted(&takings(&before, option), 0);
        }
    }
    sums
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use proptest::prelude::*;

    use super::*;
    use crate::lists::amount::{Amount, CountLimit};
    use crate::lists::army_list::{ArmyList, Entry, EntryKey};
    use crate::lists::check::check;
    use crate::lists::kind_filter::KindFilter;
    use crate::lists::rules::{
        BannedKeywords, Copies, KindCount, KindShare, LargestUnit, MinimumSpend,
    };
    use crate::lists::samples::{catalogue, keyword, kind, terms};
    use crate::share::Share;

    /// Every entry a unit can make, without its key.
    fn variants(unit: &Unit) -> Vec<Entry> {
        let mut choices: Vec<BTreeMap<_, u32>> = vec![BTreeMap::new()];
        for option in &unit.options {
            let mut more = choices.clone();
            for choice in &mut more {
                choice.insert(option.key.clone(), 1);
            }
            choices.extend(more);
        }
        let sizes = unit.sizes.iter().flat_map(|size| {
            choices.iter().map(|options| Entry {
                key: EntryKey::new("x").unwrap(),
                unit: unit.key.clone(),
                models: size.models,
                options: options.clone(),
                joins: None,
            })
        });
        sizes.collect()
    }

    /// The totals of all lists of up to two entries that the check accepts.
    fn tried(rules: &[ListRule], cap: u32) -> LegalTotals {
        let catalogue = catalogue();
        let faction = &catalogue.factions()[0];
        let all: Vec<Entry> = faction.units().iter().flat_map(variants).collect();
        let mut legal = BTreeSet::new();
        let mut hold = |entries: &[&Entry]| {
            let keyed = entries.iter().enumerate().map(|(i, &entry)| Entry {
                key: EntryKey::new(&i.to_string()).unwrap(),
                ..entry.clone()
            });
            let list = ArmyList::new(faction.key().clone(), keyed.collect()).unwrap();
            let report = check(&list, &catalogue, &terms(cap, rules));
            if report.is_accepted() {
                legal.insert(report.total);
            }
        };
        hold(&[]);
        for (i, first) in all.iter().enumerate() {
            hold(&[first]);
            for second in all.iter().skip(i) {
                hold(&[first, second]);
            }
        }
        match (legal.first(), legal.last()) {
            (Some(&least), Some(&most)) => LegalTotals::Between(least, most),
            _ => LegalTotals::None,
        }
    }

    fn rule() -> impl Strategy<Value = Rule> {
        let kinds = prop::sample::select(vec!["leader", "line", "swift", "heavy", "wagon"]);
        let least = proptest::option::of(0_u32..3);
        let most = proptest::option::of(0_u32..3);
        let points = |points| Amount::Points(Points::new(points));
        prop_oneof![
            (0_u32..130).prop_map(move |p| Rule::MinimumSpend(MinimumSpend { least: points(p) })),
            (40_u32..130).prop_map(move |p| Rule::LargestUnit(LargestUnit { most: points(p) })),
            (kinds.clone(), least, most).prop_map(|(k, least, most)| Rule::KindCount(KindCount {
                unit_kind: kind(k),
                least: least.map(CountLimit::Fixed),
                most: most.map(CountLimit::Fixed),
            })),
            (kinds.clone(), 0_u32..60, 40_u32..100).prop_map(|(k, least, most)| {
                Rule::KindShare(KindShare {
                    unit_kind: kind(k),
                    least: Some(Share::percent(least)),
                    most: Some(Share::percent(most)),
                })
            }),
            (0_u32..3, kinds).prop_map(|(most, k)| Rule::Copies(Copies {
                most: CountLimit::Fixed(most),
                of: KindFilter::Except(vec![kind(k)]),
            })),
            (1_u32..4).prop_map(|t| Rule::BannedKeywords(BannedKeywords {
                keywords: vec![keyword(&format!("toughness-{t}"))],
            })),
        ]
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(32))]

        /// Under 144 points no list of the sample faction has three entries.
        #[test]
        fn the_totals_are_those_of_all_lists_tried_one_by_one(
            rules in proptest::collection::vec(rule(), 0..4),
            cap in 90_u32..130,
        ) {
            let rules: Vec<ListRule> = rules.into_iter().map(ListRule::every_week).collect();
            let catalogue = catalogue();
            let week = WeekNo::new(2).unwrap();
            let found = legal_totals(&catalogue.factions()[0], &rules, week, Points::new(cap));
            prop_assert_eq!(found, tried(&rules, cap));
        }
    }
}
