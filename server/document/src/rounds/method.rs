//! The pairing method of a season as JSON: by score or round robin, with rounds per week.

use league::pairing::round::method::{Cycles, MAX_ROUNDS_PER_WEEK, PairingMethod, RoundSettings};
use messages::policy;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::fault::DocumentFault;

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
    /// The [`DocumentFault`] of a number of rounds that no week can have.
    pub fn to_rounds(&self) -> Result<RoundSettings, Vec<DocumentFault>> {
        let (method, per_week) = match *self {
            Self::ByScore { per_week } => (PairingMethod::ByScore, per_week),
            Self::RoundRobin { per_week, double } => {
                let cycles = if double {
                    Cycles::Double
                } else {
                    Cycles::Single
                };
                (PairingMethod::RoundRobin(cycles), per_week)
            }
        };
        RoundSettings::new(method, per_week).ok_or_else(|| {
            let message = policy::policy_rounds_a_week(MAX_ROUNDS_PER_WEEK);
            let fault = DocumentFault::new("/per_week", "rounds.per-week", message);
            vec![fault.with_limit(MAX_ROUNDS_PER_WEEK, per_week)]
        })
    }
}
