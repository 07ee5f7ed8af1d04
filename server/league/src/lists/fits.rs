//! Search for what would still fit: additions and upgrades that break no further rule.

use crate::catalogue::Catalogue;
use crate::catalogue::key::{OptionKey, UnitKey};
use crate::catalogue::unit::{Size, Unit};
use crate::lists::army_list::{ArmyList, Entry, EntryKey};
use crate::lists::terms::ListTerms;
use crate::lists::trial::Trial;
use crate::points::Points;

/// What a player could still do to a list.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Fits {
    /// Units that could be added, each with the sizes that fit, in the catalogue's order.
    pub additions: Vec<Addition>,
    /// Single steps for units already there, in the list's order.
    pub upgrades: Vec<Upgrade>,
}

/// A unit that could be added.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Addition {
    pub unit: UnitKey,
    /// The sizes that fit, without options.
    pub sizes: Vec<Size>,
}

/// A single step for one entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Upgrade {
    pub entry: EntryKey,
    pub step: UpgradeStep,
    /// Points it costs more.
    pub points: Points,
}

/// A way to add to an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum UpgradeStep {
    /// Grow to so many models.
    GrowTo(u32),
    /// Take this option once more.
    Take(OptionKey),
}

/// Everything of the list's faction that would still fit.
pub fn find_fits(list: &ArmyList, catalogue: &Catalogue, terms: &ListTerms<'_>) -> Fits {
    let Some(faction) = catalogue.faction(list.faction()) else {
        return Fits::default();
    };
    let trial = Trial::new(list, catalogue, terms);
    let additions = faction.units().iter().filter_map(|unit| {
        let sizes: Vec<Size> = unit
            .sizes
            .iter()
            .filter(|size| {
                size.points <= trial.before.left && trial.with_added(unit, size.models).is_some()
            })
            .copied()
            .collect();
        (!sizes.is_empty()).then(|| Addition {
            unit: unit.key.clone(),
            sizes,
        })
    });
    let upgrades = list.entries().iter().flat_map(|entry| {
        let unit = faction.unit(&entry.unit);
        unit.map_or_else(Vec::new, |unit| find_upgrades(&trial, entry, unit))
    });
    Fits {
        additions: additions.collect(),
        upgrades: upgrades.collect(),
    }
}

fn find_upgrades(trial: &Trial<'_>, entry: &Entry, unit: &Unit) -> Vec<Upgrade> {
    let larger = unit.sizes.iter().filter(|size| size.models > entry.models);
    let grown = larger.map(|size| UpgradeStep::GrowTo(size.models));
    let options = unit
        .options
        .iter()
        .map(|option| UpgradeStep::Take(option.key.clone()));
    let fitting = grown.chain(options).filter_map(|step| {
        let mut changed = entry.clone();
        match &step {
            UpgradeStep::GrowTo(models) => changed.models = *models,
            UpgradeStep::Take(option) => *changed.options.entry(option.clone()).or_default() += 1,
        }
        let after = trial.with_replaced(changed)?;
        Some(Upgrade {
            entry: entry.key.clone(),
            step,
            points: after.total.saturating_sub(trial.before.total),
        })
    });
    fitting.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::amount::{Amount, CountLimit};
    use crate::lists::rules::{BannedKeywords, KindCount, LargestUnit, ListRule, Rule};
    use crate::lists::samples::{catalogue, keyword, kind, list, terms};

    fn described_fits(cap: u32, rules: &[ListRule], now: &str) -> (Vec<String>, Vec<String>) {
        let fits = find_fits(&list(now), &catalogue(), &terms(cap, rules));
        let additions = fits.additions.iter().map(|addition| {
            let sizes: Vec<String> = addition
                .sizes
                .iter()
                .map(|s| s.models.to_string())
                .collect();
            format!("{} {}", addition.unit, sizes.join(" "))
        });
        let upgrades = fits.upgrades.iter().map(|upgrade| match &upgrade.step {
            UpgradeStep::GrowTo(models) => {
                format!("{} {models} models {}", upgrade.entry, upgrade.points)
            }
            UpgradeStep::Take(option) => format!("{} {option} {}", upgrade.entry, upgrade.points),
        });
        (additions.collect(), upgrades.collect())
    }

    #[test]
    fn what_fits_the_points_left_is_told_with_what_it_costs() {
        let (additions, upgrades) = described_fits(200, &[], "a turf-cutters 15 mud-sledges");
        assert_eq!(
            additions,
            [
                "mire-speaker 1",
                "sump-midwife 1",
                "turf-cutters 8 9 10 11 12",
                "rushlight-kin 6 7 8 9 10",
                "stilt-waders 4 5",
            ]
        );
        assert_eq!(
            upgrades,
            ["a 16 models 7", "a long-spades 15", "a short-spades 15",],
            "the sledges may be taken once only"
        );
    }

    #[test]
    fn nothing_that_breaks_a_rule_fits_though_the_points_would_do() {
        let rules = [
            ListRule::every_week(Rule::BannedKeywords(BannedKeywords {
                keywords: vec![keyword("toughness-3")],
            })),
            ListRule::every_week(Rule::KindCount(KindCount {
                unit_kind: kind("leader"),
                least: Some(CountLimit::Fixed(1)),
                most: Some(CountLimit::Fixed(1)),
            })),
            ListRule::every_week(Rule::LargestUnit(LargestUnit {
                most: Amount::Points(Points::new(60)),
            })),
        ];
        let (additions, upgrades) = described_fits(400, &rules, "");
        assert_eq!(
            additions,
            [
                "sump-midwife 1",
                "turf-cutters 8",
                "rushlight-kin 6 7",
                "stilt-waders 4"
            ]
        );
        assert!(upgrades.is_empty());
        let (additions, upgrades) =
            described_fits(400, &rules, "a sump-midwife 1, b mire-speaker 1");
        assert!(
            !additions.contains(&"sump-midwife 1".into()),
            "{additions:?}"
        );
        assert_eq!(upgrades, ["a leech-jar 10"]);
    }

    #[test]
    fn nothing_more_fits_a_list_over_its_cap() {
        let (additions, upgrades) = described_fits(100, &[], "a fen-trebuchet 4, b turf-cutters 8");
        assert!(additions.is_empty() && upgrades.is_empty());
    }
}
