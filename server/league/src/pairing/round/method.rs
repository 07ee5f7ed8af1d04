//! Settings of a season's rounds: by score or as a round robin, one or more a week.

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
    pub fn sentences(self) -> Vec<String> {
        let method = match self.method {
            PairingMethod::ByScore => {
                "In each round equal scores meet, as far as the wishes allow."
            }
            PairingMethod::RoundRobin(Cycles::Single) => {
                "Everybody meets everybody once, by the Berger tables; a game that is missed is caught up \
                 when both are free."
            }
            PairingMethod::RoundRobin(Cycles::Double) => {
                "Everybody meets everybody twice with the roles swapped, by the Berger tables; a game that \
                 is missed is caught up when both are free."
            }
        };
        let per_week = match self.per_week {
            1 => "A week has one round.".to_owned(),
            more => {
                format!("A week has up to {more} rounds, each on its share of the nights in order.")
            }
        };
        vec![method.to_owned(), per_week]
    }
}
