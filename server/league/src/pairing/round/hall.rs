//! The capacity of the hall: nights, and the free tables on each.

use std::fmt;

/// Most nights a round may be spread over.
pub const MAX_NIGHTS: u8 = 8;

/// A night of the week on which the club meets, counted from 0; below [`MAX_NIGHTS`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NightKey(u8);

impl NightKey {
    /// `None` from [`MAX_NIGHTS`] on.
    pub fn new(number: u8) -> Option<Self> {
        (number < MAX_NIGHTS).then_some(Self(number))
    }

    /// The number, from 0.
    pub fn number(self) -> u8 {
        self.0
    }
}

/// The number painted on a table. The same number means the same terrain on every night.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct TableNo(pub u16);

impl fmt::Display for TableNo {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// One night and the tables that are free on it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Night {
    pub key: NightKey,
    /// Free tables; a number given twice counts once.
    pub tables: Vec<TableNo>,
}

/// A bit set of nights.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NightSet(u8);

impl NightSet {
    pub const NONE: Self = Self(0);
    /// Every night there can be.
    pub const ALL: Self = Self(u8::MAX);

    /// The nights with a table.
    pub fn with_tables(nights: &[Night]) -> Self {
        let open = nights.iter().filter(|night| !night.tables.is_empty());
        open.map(|night| night.key).collect()
    }

    /// The set as bits, night 0 lowest.
    pub const fn bits(self) -> u8 {
        self.0
    }

    /// The set with these bits, night 0 lowest.
    pub const fn from_bits(bits: u8) -> Self {
        Self(bits)
    }

    /// Nights in both sets.
    pub const fn intersection(self, other: Self) -> Self {
        Self(self.0 & other.0)
    }

    /// Nights of this set that are not in the other.
    pub const fn difference(self, other: Self) -> Self {
        Self(self.0 & !other.0)
    }

    pub const fn is_empty(self) -> bool {
        self.0 == 0
    }

    pub const fn is_subset(self, other: Self) -> bool {
        self.0 & !other.0 == 0
    }

    pub const fn contains(self, night: NightKey) -> bool {
        self.0 & (1 << night.0) != 0
    }

    /// The nights, earliest first.
    pub fn iter(self) -> impl Iterator<Item = NightKey> {
        (0..MAX_NIGHTS)
            .map(NightKey)
            .filter(move |&night| self.contains(night))
    }
}

/// How many games each set of nights can hold.
#[derive(Clone, Debug)]
pub struct Capacity(Vec<(NightSet, usize)>);

impl Capacity {
    /// The capacity of every set of open nights, fewest nights first.
    pub fn new(nights: &[Night]) -> Self {
        let open = NightSet::with_tables(nights);
        let sets = (1..=open.bits())
            .map(NightSet::from_bits)
            .filter(|set| set.is_subset(open));
        let mut sets: Vec<_> = sets.map(|set| (set, count_slots(nights, set))).collect();
        sets.sort_by_key(|(set, _)| set.bits().count_ones());
        Self(sets)
    }

    /// The nights with a table.
    pub fn open_nights(&self) -> NightSet {
        self.0.last().map_or(NightSet::NONE, |&(set, _)| set)
    }

    pub fn total(&self) -> usize {
        self.0.last().map_or(0, |&(_, games)| games)
    }

    /// The first set of nights that would need more tables than it has, when games can be played on
    /// these nights each. None means that every game finds a table (Hall 1935).
    pub fn find_crowded(&self, games: &[NightSet]) -> Option<NightSet> {
        let held = |set: NightSet| games.iter().filter(|game| game.is_subset(set)).count();
        self.0
            .iter()
            .find(|&&(set, most)| held(set) > most)
            .map(|&(set, _)| set)
    }

    /// All sets of nights.
    pub fn sets(&self) -> impl Iterator<Item = (NightSet, usize)> {
        self.0.iter().copied()
    }
}

fn count_slots(nights: &[Night], set: NightSet) -> usize {
    let there = nights.iter().filter(|night| set.contains(night.key));
    let slots = there.flat_map(|night| night.tables.iter().map(|&table| (night.key, table)));
    slots.collect::<std::collections::BTreeSet<_>>().len()
}

impl FromIterator<NightKey> for NightSet {
    fn from_iter<I: IntoIterator<Item = NightKey>>(nights: I) -> Self {
        Self(
            nights
                .into_iter()
                .fold(0, |bits, night| bits | 1 << night.0),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_set_of_nights_keeps_each_night_once_and_in_order() {
        let [tuesday, thursday] = [1, 3].map(|n| NightKey::new(n).unwrap());
        let both: NightSet = [thursday, tuesday, thursday].into_iter().collect();
        assert_eq!(both.iter().collect::<Vec<_>>(), [tuesday, thursday]);
        assert!(NightSet::from_iter([tuesday]).is_subset(both));
        assert!(both.difference(both).is_empty() && NightKey::new(MAX_NIGHTS).is_none());
    }
}
