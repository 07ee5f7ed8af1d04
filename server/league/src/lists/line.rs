//! One line of a list: an entry with its unit and its points.

use crate::catalogue::Catalogue;
use crate::catalogue::unit::Unit;
use crate::lists::army_list::{ArmyList, Entry};
use crate::points::Points;

/// One entry with what the catalogue says about it.
#[derive(Clone, Copy, Debug)]
pub struct ListLine<'a> {
    pub entry: &'a Entry,
    /// Its unit, `None` when the faction has no such unit.
    pub unit: Option<&'a Unit>,
    /// Points of the entry with its options.
    pub points: Points,
}

impl ListLine<'_> {
    /// The unit's name, or its key where the catalogue has no such unit.
    pub fn name(&self) -> &str {
        self.unit
            .map_or(self.entry.unit.as_str(), |unit| unit.name.as_str())
    }
}

/// The entries of a list with their units and points.
pub fn lines<'a>(list: &'a ArmyList, catalogue: &'a Catalogue) -> Vec<ListLine<'a>> {
    let faction = catalogue.faction(list.faction());
    list.entries()
        .iter()
        .map(|entry| {
            let unit = faction.and_then(|faction| faction.unit(&entry.unit));
            ListLine {
                entry,
                unit,
                points: unit.map_or(Points::ZERO, |unit| entry_points(entry, unit)),
            }
        })
        .collect()
}

/// Points of an entry: its size and every taking of its options. A size that is not offered
/// counts as the next larger one, past the largest as the largest, which is a finding of its own.
pub fn entry_points(entry: &Entry, unit: &Unit) -> Points {
    let size = unit
        .sizes
        .iter()
        .find(|size| size.models >= entry.models)
        .or(unit.sizes.last());
    size.map_or(Points::ZERO, |size| size.points) + option_points(entry, unit)
}

/// Points of every taking of an entry's options; an unknown option counts nothing, for it is a
/// finding of its own.
pub fn option_points(entry: &Entry, unit: &Unit) -> Points {
    let options = entry.options.iter().filter_map(|(key, &taken)| {
        let option = unit.option(key)?;
        Some(option.price.for_models(entry.models).saturating_mul(taken))
    });
    options.sum()
}
