//! What every rule needs to know about a list, worked out once.

use crate::catalogue::unit::Unit;
use crate::catalogue::{Catalogue, Faction};
use crate::lists::army_list::{ArmyList, Entry};
use crate::lists::carry_over::Comparison;
use crate::lists::check::Terms;
use crate::points::Points;

/// One entry with what the catalogue says about it.
#[derive(Clone, Copy, Debug)]
pub struct Line<'a> {
    /// The entry.
    pub entry: &'a Entry,
    /// Its unit, `None` when the faction has no such unit.
    pub unit: Option<&'a Unit>,
    /// Points of the entry with its options.
    pub points: Points,
}

impl Line<'_> {
    /// The unit's name, or its key where the catalogue has no such unit.
    pub fn name(&self) -> &str {
        self.unit
            .map_or(self.entry.unit.as_str(), |unit| unit.name.as_str())
    }
}

/// A list seen through its catalogue and the terms of its week.
#[derive(Debug)]
pub struct Facts<'a> {
    /// The terms of the week.
    pub terms: &'a Terms<'a>,
    /// The list.
    pub list: &'a ArmyList,
    /// The list's faction in the catalogue.
    pub faction: Option<&'a Faction>,
    /// The entries in the list's order.
    pub lines: Vec<Line<'a>>,
    /// Points of all entries.
    pub total: Points,
    /// The list beside the player's last one, where there is one.
    pub comparison: Option<Comparison<'a>>,
}

impl<'a> Facts<'a> {
    /// Looks every entry up.
    pub fn new(list: &'a ArmyList, catalogue: &'a Catalogue, terms: &'a Terms<'a>) -> Self {
        let lines = lines(list, catalogue);
        Self {
            terms,
            list,
            faction: catalogue.faction(list.faction()),
            total: lines.iter().map(|line| line.points).sum(),
            comparison: terms.previous.map(|previous| {
                Comparison::new(previous, list, &lines, catalogue).under(terms.cap)
            }),
            lines,
        }
    }
}

/// The entries of a list with their units and points.
pub fn lines<'a>(list: &'a ArmyList, catalogue: &'a Catalogue) -> Vec<Line<'a>> {
    let faction = catalogue.faction(list.faction());
    list.entries()
        .iter()
        .map(|entry| {
            let unit = faction.and_then(|faction| faction.unit(&entry.unit));
            Line {
                entry,
                unit,
                points: unit.map_or(Points::ZERO, |unit| points(entry, unit)),
            }
        })
        .collect()
}

/// Points of an entry: its size and every taking of its options. A size that is not offered
/// counts as the next larger one, past the largest as the largest; an unknown option counts
/// nothing. Both are findings of their own.
pub fn points(entry: &Entry, unit: &Unit) -> Points {
    let size = unit
        .sizes
        .iter()
        .find(|size| size.models >= entry.models)
        .or(unit.sizes.last());
    let options = entry.options.iter().filter_map(|(key, &taken)| {
        let option = unit.option(key)?;
        Some(option.price.for_models(entry.models).times(taken))
    });
    size.map_or(Points::ZERO, |size| size.points) + options.sum()
}
