//! The repair of a published round as JSON: what it repairs, and what changes for whom.

use league::pairing::round::changes::{Assignment, AssignmentChange};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

/// Which version of a round was repaired, and why.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct RepairDocument {
    /// The version before this one.
    pub of: Uuid,
    /// Why, for everybody to read.
    #[schema(example = "One player less tonight")]
    pub reason: String,
}

/// A player whose part in a round changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, ToSchema)]
pub struct ChangeDocument {
    /// Who.
    pub player: Uuid,
    /// As the version before had it.
    pub before: RoundPartDocument,
    /// As it is now.
    pub after: RoundPartDocument,
}

/// A player's part in a round.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum RoundPartDocument {
    /// A game.
    Game {
        /// Against whom.
        opponent: Uuid,
        /// Number of the night.
        night: u8,
        /// Number of the table.
        table: u16,
    },
    /// Sits out.
    Bye,
    /// Not in the round.
    Out,
}

impl From<&AssignmentChange> for ChangeDocument {
    fn from(change: &AssignmentChange) -> Self {
        Self {
            player: change.player.0,
            before: change.before.into(),
            after: change.after.into(),
        }
    }
}

impl From<Assignment> for RoundPartDocument {
    fn from(part: Assignment) -> Self {
        match part {
            Assignment::Game {
                opponent,
                night,
                table,
            } => Self::Game {
                opponent: opponent.0,
                night: night.number(),
                table: table.0,
            },
            Assignment::Bye => Self::Bye,
            Assignment::NotPlaying => Self::Out,
        }
    }
}
