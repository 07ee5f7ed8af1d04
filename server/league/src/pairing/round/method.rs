//! Settings of a season's rounds: by score or as a round robin, one or more a week.

use messages::{Message, rounds};

/// Most rounds of one week: one for each night that can be told apart, less one.
pub const MAX_ROUNDS_PER_WEEK: u8 = 7;

/// What decides who may meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PairingMethod {
    /// Equal scores meet, by the season's wishes (a Swiss system in the words of FIDE Handbook C.04).
    ByScore,
    /// Everybody meets everybody, by the Berger tables (FIDE Handbook C.05, annex 1).
    RoundRobin(Cycles),
}

/// How often everybody meets everybody.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cycles {
    Single,
    /// Twice, with the roles swapped.
    Double,
}

/// How a season makes its rounds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RoundSettings {
    method: PairingMethod,
    per_week: u8,
}

impl RoundSettings {
    /// `None` for no round a week, or more than [`MAX_ROUNDS_PER_WEEK`].
    pub fn new(method: PairingMethod, per_week: u8) -> Option<Self> {
        (1..=MAX_ROUNDS_PER_WEEK)
            .contains(&per_week)
            .then_some(Self { method, per_week })
    }

    pub fn method(self) -> PairingMethod {
        self.method
    }

    pub fn per_week(self) -> u8 {
        self.per_week
    }

    /// The rules as players read them.
    pub fn messages(self) -> [Message; 2] {
        let method = match self.method {
            PairingMethod::ByScore => rounds::rounds_by_score(),
            PairingMethod::RoundRobin(Cycles::Single) => rounds::rounds_round_robin(),
            PairingMethod::RoundRobin(Cycles::Double) => rounds::rounds_double_round_robin(),
        };
        let per_week = match self.per_week {
            1 => rounds::rounds_one_a_week(),
            more => rounds::rounds_several_a_week(more),
        };
        [method, per_week]
    }
}
