//! The two sides of one game.

use std::ops::{Index, IndexMut};

/// A side of a game, in the order in which the pairing names the players.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Side {
    /// Named first; attacks in the first leg of a scenario with roles.
    First,
    /// Named second.
    Second,
}

impl Side {
    /// Both sides in order.
    pub const BOTH: [Self; 2] = [Self::First, Self::Second];

    pub const fn other(self) -> Self {
        match self {
            Self::First => Self::Second,
            Self::Second => Self::First,
        }
    }

    /// The role of this side in a leg, counted from zero: roles swap with every leg.
    pub const fn role_in_leg(self, leg: usize) -> GameRole {
        match (self, leg.is_multiple_of(2)) {
            (Self::First, true) | (Self::Second, false) => GameRole::Attacker,
            (Self::First, false) | (Self::Second, true) => GameRole::Defender,
        }
    }
}

/// What a side does in a scenario that is not symmetric.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum GameRole {
    /// Must achieve the scenario's aim.
    Attacker,
    /// Must prevent it.
    Defender,
}

impl GameRole {
    /// Both roles in order.
    pub const BOTH: [Self; 2] = [Self::Attacker, Self::Defender];

    pub const fn other(self) -> Self {
        match self {
            Self::Attacker => Self::Defender,
            Self::Defender => Self::Attacker,
        }
    }

    /// The side with this role in the first leg.
    pub const fn first_side(self) -> Side {
        match self {
            Self::Attacker => Side::First,
            Self::Defender => Side::Second,
        }
    }

    /// The word of the trade.
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Attacker => "attacker",
            Self::Defender => "defender",
        }
    }
}

/// The same thing once for each side.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct PerSide<T> {
    /// Of the side named first.
    pub first: T,
    /// Of the side named second.
    pub second: T,
}

impl<T> PerSide<T> {
    /// One for each side.
    pub const fn new(first: T, second: T) -> Self {
        Self { first, second }
    }

    /// Made for each side in order.
    pub fn from_fn(mut make: impl FnMut(Side) -> T) -> Self {
        let first = make(Side::First);
        Self::new(first, make(Side::Second))
    }

    /// `mine` for `side`, `theirs` for the other.
    pub fn from_view_of(side: Side, mine: T, theirs: T) -> Self {
        match side {
            Side::First => Self::new(mine, theirs),
            Side::Second => Self::new(theirs, mine),
        }
    }

    /// The side that holds `wanted`.
    pub fn side_of(&self, wanted: &T) -> Option<Side>
    where
        T: PartialEq,
    {
        Side::BOTH.into_iter().find(|&side| self[side] == *wanted)
    }
}

impl<T> Index<Side> for PerSide<T> {
    type Output = T;

    fn index(&self, side: Side) -> &T {
        match side {
            Side::First => &self.first,
            Side::Second => &self.second,
        }
    }
}

impl<T> IndexMut<Side> for PerSide<T> {
    fn index_mut(&mut self, side: Side) -> &mut T {
        match side {
            Side::First => &mut self.first,
            Side::Second => &mut self.second,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn roles_swap_in_the_second_leg() {
        assert_eq!(Side::First.role_in_leg(0), GameRole::Attacker);
        assert_eq!(Side::First.role_in_leg(1), GameRole::Defender);
        assert_eq!(Side::Second.role_in_leg(1), GameRole::Attacker);
        for role in GameRole::BOTH {
            assert_eq!(role.first_side().role_in_leg(0), role);
        }
    }

    #[test]
    fn a_side_finds_its_own() {
        let both = PerSide::from_view_of(Side::Second, 'm', 't');
        assert_eq!(both, PerSide::new('t', 'm'));
        assert_eq!(both.side_of(&'m'), Some(Side::Second));
        assert_eq!(both.side_of(&'x'), None);
    }
}
