//! Pairs of players: games of a round, games that are fixed, meetings of earlier weeks.

use crate::ids::PlayerId;
use crate::week::WeekNo;

use super::hall::{NightKey, TableNo};

/// Two different players, in no order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Pair {
    first: PlayerId,
    second: PlayerId,
}

impl Pair {
    /// `None` when both are the same player.
    pub fn new(a: PlayerId, b: PlayerId) -> Option<Self> {
        (a != b).then(|| Self {
            first: a.min(b),
            second: a.max(b),
        })
    }

    /// Both players, smaller identity first.
    pub fn players(self) -> [PlayerId; 2] {
        [self.first, self.second]
    }

    /// Whether this player is one of the two.
    pub fn contains(self, player: PlayerId) -> bool {
        self.first == player || self.second == player
    }
}

/// A game of a round, proposed or published.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Game {
    /// Night it is played on.
    pub night: NightKey,
    /// Table it is played on.
    pub table: TableNo,
    /// Who attacks, where the scenario has roles.
    pub attacker: PlayerId,
    pub defender: PlayerId,
}

impl Game {
    /// The two players; `None` only for a game of a player against themselves.
    pub fn pair(&self) -> Option<Pair> {
        Pair::new(self.attacker, self.defender)
    }
}

/// A game that must be in the round, with its roles.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FixedGame {
    /// Attacks, where the scenario has roles.
    pub attacker: PlayerId,
    pub defender: PlayerId,
}

impl FixedGame {
    /// The two players; `None` only for somebody against themselves.
    pub fn pair(self) -> Option<Pair> {
        Pair::new(self.attacker, self.defender)
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Meeting {
    pub pair: Pair,
    pub week: WeekNo,
}
