//! The hall: which nights there are, and which tables stand on each.

use std::fmt;

/// Most nights a round may be spread over.
pub const MOST_NIGHTS: u8 = 8;

/// A night of the week on which the club meets, counted from 0; below [`MOST_NIGHTS`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NightKey(u8);

impl NightKey {
    /// `None` from [`MOST_NIGHTS`] on.
    pub fn new(number: u8) -> Option<Self> {
        (number < MOST_NIGHTS).then_some(Self(number))
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
    /// Which night.
    pub key: NightKey,
    /// Free tables; a number given twice counts once.
    pub tables: Vec<TableNo>,
}

/// A set of nights.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Nights(u8);

impl Nights {
    /// No night.
    pub const NONE: Self = Self(0);
    /// Every night there can be.
    pub const ALL: Self = Self(u8::MAX);

    /// The nights with a table.
    pub fn open(nights: &[Night]) -> Self {
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
    pub const fn and(self, other: Self) -> Self {
        Self(self.0 & other.0)
    }

    /// Nights of this set that are not in the other.
    pub const fn without(self, other: Self) -> Self {
        Self(self.0 & !other.0)
    }

    /// No night at all?
    pub const fn is_empty(self) -> bool {
        self.0 == 0
    }

    /// Is every night of this set in the other?
    pub const fn within(self, other: Self) -> bool {
        self.0 & !other.0 == 0
    }

    /// Is that night in the set?
    pub const fn contains(self, night: NightKey) -> bool {
        self.0 & (1 << night.0) != 0
    }

    /// The nights, earliest first.
    pub fn iter(self) -> impl Iterator<Item = NightKey> {
        (0..MOST_NIGHTS)
            .map(NightKey)
            .filter(move |&night| self.contains(night))
    }
}

/// How many games each set of nights can hold.
#[derive(Clone, Debug)]
pub struct Capacity(Vec<(Nights, usize)>);

impl Capacity {
    /// The capacity of every set of open nights, fewest nights first.
    pub fn of(nights: &[Night]) -> Self {
        let open = Nights::open(nights);
        let sets = (1..=open.bits())
            .map(Nights::from_bits)
            .filter(|set| set.within(open));
        let mut sets: Vec<_> = sets.map(|set| (set, tables(nights, set))).collect();
        sets.sort_by_key(|(set, _)| set.bits().count_ones());
        Self(sets)
    }

    /// The nights with a table.
    pub fn open(&self) -> Nights {
        self.0.last().map_or(Nights::NONE, |&(set, _)| set)
    }

    /// Games in all.
    pub fn total(&self) -> usize {
        self.0.last().map_or(0, |&(_, games)| games)
    }

    /// The first set of nights that would need more tables than it has, when games can be played on
    /// these nights each. None means that every game finds a table (Hall 1935).
    pub fn crowded(&self, games: &[Nights]) -> Option<Nights> {
        let held = |set: Nights| games.iter().filter(|game| game.within(set)).count();
        self.0
            .iter()
            .find(|&&(set, most)| held(set) > most)
            .map(|&(set, _)| set)
    }

    /// All sets of nights.
    pub fn sets(&self) -> impl Iterator<Item = (Nights, usize)> {
        self.0.iter().copied()
    }
}

fn tables(nights: &[Night], set: Nights) -> usize {
    let there = nights.iter().filter(|night| set.contains(night.key));
    let slots = there.flat_map(|night| night.tables.iter().map(|&table| (night.key, table)));
    slots.collect::<std::collections::BTreeSet<_>>().len()
}

impl FromIterator<NightKey> for Nights {
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
        let both: Nights = [thursday, tuesday, thursday].into_iter().collect();
        assert_eq!(both.iter().collect::<Vec<_>>(), [tuesday, thursday]);
        assert!(Nights::from_iter([tuesday]).within(both));
        assert!(both.without(both).is_empty() && NightKey::new(MOST_NIGHTS).is_none());
    }
}
