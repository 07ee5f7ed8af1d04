//! The cost of a pairing as data: amounts on levels, compared lexicographically.

use super::wishes::Wish;

/// What a cost counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// Players without a game: always weighs most.
    SittingOut,
    /// Games that differ from the published round, when that is repaired.
    Changed,
    /// A wish of the season, in the season's order.
    Wish(Wish),
    /// The seeded draw: always weighs least.
    Draw,
}

/// Amounts given up, most important level first. Costs of one task compare level by level.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Cost(pub Vec<(Level, u64)>);

impl Cost {
    /// The amount on one level; 0 where the season does not count it.
    pub fn amount(&self, level: Level) -> u64 {
        let found = self.0.iter().find(|(counted, _)| *counted == level);
        found.map_or(0, |&(_, amount)| amount)
    }
}
