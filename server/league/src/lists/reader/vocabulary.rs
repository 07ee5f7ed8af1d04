//! Vocabulary: the names that a text may use.

use std::cell::OnceCell;
use std::collections::HashMap;

use super::name_index::{NameIndex, normalize_name};
use super::segment::Segment;
use crate::catalogue::key::{FactionKey, KindKey};
use crate::catalogue::unit::Unit;
use crate::catalogue::{Catalogue, Faction};

/// Everything that can be named once the faction is known.
pub struct Vocabulary<'a> {
    /// All factions of the catalogue.
    pub factions: NameIndex<&'a FactionKey>,
    /// The units of the list's faction.
    pub units: NameIndex<&'a Unit>,
    pub kinds: NameIndex<&'a KindKey>,
    catalogue: &'a Catalogue,
    faction: Option<&'a Faction>,
    foreign: OnceCell<NameIndex<ForeignUnit<'a>>>,
}

/// A unit of another faction than the list's, or of any while that is unknown.
#[derive(Clone, Copy, Debug)]
pub struct ForeignUnit<'a> {
    pub faction: &'a Faction,
    pub unit: &'a Unit,
}

impl PartialEq for ForeignUnit<'_> {
    fn eq(&self, other: &Self) -> bool {
        (self.faction.key(), &self.unit.key) == (other.faction.key(), &other.unit.key)
    }
}

impl<'a> Vocabulary<'a> {
    /// The names of a catalogue as a list of `faction` uses them.
    pub fn new(catalogue: &'a Catalogue, faction: Option<&'a Faction>) -> Self {
        let units = faction.map_or(&[][..], Faction::units);
        let factions = catalogue.factions().iter();
        Self {
            factions: NameIndex::new(factions.map(|f| (f.name().as_str(), f.key()))),
            units: NameIndex::new(units.iter().map(|unit| (unit.name.as_str(), unit))),
            kinds: NameIndex::new(units.iter().map(|unit| (unit.kind.as_str(), &unit.kind))),
            catalogue,
            faction,
            foreign: OnceCell::new(),
        }
    }

    /// The units of the other factions; most texts name none of them.
    pub fn foreign(&self) -> &NameIndex<ForeignUnit<'a>> {
        self.foreign.get_or_init(|| {
            let own = self.faction.map(Faction::key);
            let factions = self.catalogue.factions().iter();
            let others = factions.filter(|faction| Some(faction.key()) != own);
            NameIndex::new(others.flat_map(|faction| {
                let units = faction.units().iter();
                units.map(move |unit| (unit.name.as_str(), ForeignUnit { faction, unit }))
            }))
        })
    }
}

/// The faction a text is about: the first one it names, or else the one that has most of the
/// units it names, if there is a single such faction.
pub fn detect_faction<'a>(
    lines: &[Vec<Segment<'_>>],
    catalogue: &'a Catalogue,
) -> Option<&'a Faction> {
    let factions = catalogue.factions();
    let names = NameIndex::new(
        factions
            .iter()
            .enumerate()
            .map(|(i, f)| (f.name().as_str(), i)),
    );
    let segments = || lines.iter().flatten();
    let exact = |segment: &Segment<'_>| names.find_exact(&segment.name);
    let typed = |segment: &Segment<'_>| {
        let found = names.find(&segment.name)?;
        found.is_close().then_some(found.value)
    };
    let named = segments()
        .find_map(exact)
        .or_else(|| segments().find_map(typed));
    let chosen = named.or_else(|| most_named(segments(), factions));
    chosen.and_then(|i| factions.get(i))
}

fn most_named<'s>(
    segments: impl Iterator<Item = &'s Segment<'s>>,
    factions: &[Faction],
) -> Option<usize> {
    let units = factions.iter().enumerate().flat_map(|(i, faction)| {
        let units = faction.units().iter();
        units.map(move |unit| (normalize_name(unit.name.as_str()), i))
    });
    let mut holders: HashMap<String, Vec<usize>> = HashMap::new();
    for (form, faction) in units {
        holders.entry(form).or_default().push(faction);
    }
    let mut votes = vec![0_usize; factions.len()];
    for segment in segments {
        for &faction in holders.get(&segment.name).into_iter().flatten() {
            if let Some(count) = votes.get_mut(faction) {
                *count += 1;
            }
        }
    }
    let most = votes.iter().copied().max().filter(|&most| most > 0)?;
    let mut leaders = (0..votes.len()).filter(|&i| votes.get(i) == Some(&most));
    let leader = leaders.next();
    leader.filter(|_| leaders.next().is_none())
}
