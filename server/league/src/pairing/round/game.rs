//! Who plays whom: pairs of players, games of a round, games that are fixed, meetings of earlier weeks.

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

    /// Is this player one of the two?
    pub fn has(self, player: PlayerId) -> bool {
        self.first == player || self.second == player
    }
}

/// One game of a proposal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Game {
    /// Night it is played on.
    pub night: NightKey,
    /// Table it is played on.
    pub table: TableNo,
    /// Who attacks, where the scenario has roles.
    pub attacker: PlayerId,
    /// Who defends.
    pub defender: PlayerId,
}

impl Game {
    /// The two players; `None` only for a game of a player against themselves.
    pub fn pair(&self) -> Option<Pair> {
        Pair::new(self.attacker, self.defender)
    }
}

/// Two players and who of them attacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Fixture {
    /// Attacks, where the scenario has roles.
    pub attacker: PlayerId,
    /// Defends.
    pub defender: PlayerId,
}

impl Fixture {
    /// The two players; `None` only for somebody against themselves.
    pub fn pair(self) -> Option<Pair> {
        Pair::new(self.attacker, self.defender)
    }
}

/// Two players met.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Meeting {
    /// Who.
    pub pair: Pair,
    /// When.
    pub week: WeekNo,
}
