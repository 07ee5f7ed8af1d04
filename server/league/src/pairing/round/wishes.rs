//! Wishes: the soft constraints of a season's pairings, most important first.

use messages::{Message, policy};

/// One wish. A pairing gives up as little as possible of the first, then of the second, and so on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Wish {
    /// Who has met does not meet again; where that cannot be helped, those meet who met least often. FIDE
    /// Handbook C.04.1, article 2, forbids it in all cases; as a wish it leaves a round possible once
    /// everybody has met.
    NoRematch,
    /// Nobody sits out who already has (C.04.1, article 4).
    NoSecondBye,
    /// Who offered to be the spare sits out before anyone else (common practice, no source).
    SpareSitsOut,
    /// The bye goes to the fewest points (common practice, no source).
    ByeToFewestPoints,
    /// Equal scores meet (C.04.1, article 5); the square of each difference counts.
    CloseScores,
    /// Players of one club do not meet in the early weeks (common practice, no source).
    ClubsApart,
    /// Players of one faction do not meet in the early weeks (common practice, no source).
    FactionsApart,
    /// Nobody floats the same way again within two rounds (FIDE C.04.3, from memory).
    NoRepeatedFloat,
    /// Attacker and defender differ by at most two, and never three times the same in a row (C.04.1,
    /// articles 6 and 7).
    RolesInBounds,
    /// The role had less often, otherwise the other than last time (C.04.1, article 8).
    RolesEven,
}

/// Why an order of wishes was refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WishFault {
    /// The same wish stands twice.
    Twice(Wish),
}

impl WishFault {
    pub fn message(&self) -> Message {
        match self {
            Self::Twice(wish) => policy::policy_wish_twice(format!("{wish:?}")),
        }
    }
}

/// The season's ordered wishes. A wish that is left out plays no part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wishes {
    order: Vec<Wish>,
    early_weeks: u8,
}

impl Wishes {
    /// Wishes in this order, most important first. Clubs and factions are kept apart in weeks 1 to
    /// `early_weeks`.
    ///
    /// # Errors
    /// [`WishFault::Twice`] when a wish is repeated.
    pub fn new(order: Vec<Wish>, early_weeks: u8) -> Result<Self, WishFault> {
        match (1..order.len()).find(|&at| order[..at].contains(&order[at])) {
            Some(at) => Err(WishFault::Twice(order[at])),
            None => Ok(Self { order, early_weeks }),
        }
    }

    /// The same order with these wishes alone.
    #[must_use]
    pub fn only(&self, kept: &[Wish]) -> Self {
        let mut wishes = self.clone();
        wishes.order.retain(|wish| kept.contains(wish));
        wishes
    }

    pub fn order(&self) -> &[Wish] {
        &self.order
    }

    /// Last week in which clubs and factions are kept apart.
    pub fn early_weeks(&self) -> u8 {
        self.early_weeks
    }
}

impl Default for Wishes {
    /// Good for 8 to 24 players in one club.
    fn default() -> Self {
        use Wish::*;
        let order = vec![
            NoRematch,
            NoSecondBye,
            SpareSitsOut,
            ByeToFewestPoints,
            CloseScores,
            ClubsApart,
            FactionsApart,
            NoRepeatedFloat,
            RolesInBounds,
            RolesEven,
        ];
        Self {
            order,
            early_weeks: 2,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_wish_stands_twice() {
        let twice = vec![Wish::CloseScores, Wish::NoRematch, Wish::CloseScores];
        assert_eq!(
            Wishes::new(twice, 0),
            Err(WishFault::Twice(Wish::CloseScores))
        );
        let standard = Wishes::default();
        assert_eq!(Wishes::new(standard.order().to_vec(), 2), Ok(standard));
    }
}
