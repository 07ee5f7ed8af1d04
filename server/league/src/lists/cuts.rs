//! Search for cuts: single steps that bring a list under its cap.

use crate::catalogue::Catalogue;
use crate::catalogue::key::OptionKey;
use crate::catalogue::unit::Unit;
use crate::lists::army_list::{ArmyList, Entry, EntryKey};
use crate::lists::terms::ListTerms;
use crate::lists::trial::Trial;
use crate::points::Points;

/// One step that brings a list under its cap and breaks no further rule.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cut {
    pub entry: EntryKey,
    pub step: CutStep,
    /// Points it saves.
    pub saves: Points,
}

/// A way to take from an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CutStep {
    /// Shrink to so many models.
    ShrinkTo(u32),
    /// Take this option no more.
    Drop(OptionKey),
    /// Leave the whole entry out.
    LeaveOut,
}

/// The steps that suffice, the smallest saving first; empty when the list is within its cap or no
/// single step does.
///
/// "612 of 600 points: drop 2 Pole-Hands (16) or the tar shot (15)."
pub fn find_cuts(list: &ArmyList, catalogue: &Catalogue, terms: &ListTerms<'_>) -> Vec<Cut> {
    let trial = Trial::new(list, catalogue, terms);
    let Some(faction) = catalogue.faction(list.faction()) else {
        return Vec::new();
    };
    if trial.before.total <= terms.cap {
        return Vec::new();
    }
    let mut cuts: Vec<Cut> = list
        .entries()
        .iter()
        .flat_map(|entry| {
            let unit = faction.unit(&entry.unit);
            unit.map_or_else(Vec::new, |unit| entry_cuts(&trial, terms.cap, entry, unit))
        })
        .collect();
    cuts.sort_by_key(|cut| cut.saves);
    cuts
}

/// The smallest shrinking that suffices, every option that does, and leaving the entry out.
fn entry_cuts(trial: &Trial<'_>, cap: Points, entry: &Entry, unit: &Unit) -> Vec<Cut> {
    let smaller = unit.sizes.iter().rev().map(|size| size.models);
    let smaller = smaller.filter(|&models| models < entry.models);
    let mut shrunk =
        smaller.filter_map(|models| try_cut(trial, cap, entry, CutStep::ShrinkTo(models)));
    let options = entry.options.keys().cloned().map(CutStep::Drop);
    let others = options.chain([CutStep::LeaveOut]);
    let others = others.filter_map(|step| try_cut(trial, cap, entry, step));
    shrunk.next().into_iter().chain(others).collect()
}

fn try_cut(trial: &Trial<'_>, cap: Points, entry: &Entry, step: CutStep) -> Option<Cut> {
    let mut changed = entry.clone();
    let after = match &step {
        CutStep::ShrinkTo(models) => {
            changed.models = *models;
            trial.with_replaced(changed)
        }
        CutStep::Drop(option) => {
            changed.options.remove(option);
            trial.with_replaced(changed)
        }
        CutStep::LeaveOut => trial.without(&entry.key),
    }?;
    (after.total <= cap).then(|| Cut {
        entry: entry.key.clone(),
        step,
        saves: trial.before.total.saturating_sub(after.total),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::amount::CountLimit;
    use crate::lists::rules::{KindCount, ListRule, Rule};
    use crate::lists::samples::{catalogue, kind, list, terms};

    fn described_cuts(cap: u32, rules: &[ListRule], now: &str) -> Vec<String> {
        find_cuts(&list(now), &catalogue(), &terms(cap, rules))
            .iter()
            .map(|cut| match &cut.step {
                CutStep::ShrinkTo(models) => format!("{} to {models} {}", cut.entry, cut.saves),
                CutStep::Drop(option) => format!("{} {option} {}", cut.entry, cut.saves),
                CutStep::LeaveOut => format!("{} {}", cut.entry, cut.saves),
            })
            .collect()
    }

    #[test]
    fn twelve_points_over_are_saved_by_two_models_or_by_an_option() {
        let now = "a turf-cutters 12, b stilt-waders 4 eel-nets, c bog-oak-hulks 2 root-armour";
        assert_eq!(
            described_cuts(252, &[], now),
            ["a to 10 14", "c root-armour 20", "b 70", "a 84", "c 110",]
        );
    }

    #[test]
    fn no_cut_is_offered_that_breaks_another_rule() {
        let line = ListRule::every_week(Rule::KindCount(KindCount {
            unit_kind: kind("line"),
            least: Some(CountLimit::Fixed(1)),
            most: None,
        }));
        assert_eq!(
            described_cuts(60, &[line], "a turf-cutters 8, b stilt-waders 4"),
            ["b 60"]
        );
    }

    #[test]
    fn a_list_within_its_cap_needs_no_cut() {
        assert!(described_cuts(56, &[], "a turf-cutters 8").is_empty());
    }
}
