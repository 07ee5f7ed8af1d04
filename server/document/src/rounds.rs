//! How a season makes its rounds, as JSON.

use league::pairing::round::method::{Cycles, MOST_PER_WEEK, Method, Rounds};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::fault::Fault;

/// How a season makes its rounds.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum RoundsDocument {
    /// In each round equal scores meet, by the season's wishes.
    ByScore {
        /// Rounds of a week, each on its share of the nights in order.
        #[serde(default = "one")]
        #[schema(example = 1, minimum = 1, maximum = 7)]
        per_week: u8,
    },
    /// Everybody meets everybody, by the Berger tables.
    RoundRobin {
        /// Rounds of a week.
        #[serde(default = "one")]
        #[schema(example = 1, minimum = 1, maximum = 7)]
        per_week: u8,
        /// Twice, with the roles swapped.
        #[serde(default)]
        double: bool,
    },
}

fn one() -> u8 {
    1
}

impl Default for RoundsDocument {
    fn default() -> Self {
        Self::ByScore { per_week: one() }
    }
}

impl RoundsDocument {
    /// The value.
    ///
    /// # Errors
    /// The [`Fault`] of a number of rounds that no week can have.
    pub fn rounds(&self) -> Result<Rounds, Vec<Fault>> {
        let (method, per_week) = match *self {
            Self::ByScore { per_week } => (Method::ByScore, per_week),
            Self::RoundRobin { per_week, double } => {
                let cycles = if double {
                    Cycles::Double
                } else {
                    Cycles::Single
                };
                (Method::RoundRobin(cycles), per_week)
            }
        };
        Rounds::new(method, per_week).ok_or_else(|| {
            let detail = format!("A week has 1 to {MOST_PER_WEEK} rounds.");
            let fault = Fault::new("/per_week", "rounds.per-week", detail);
            vec![fault.with(MOST_PER_WEEK, per_week)]
        })
    }
}
