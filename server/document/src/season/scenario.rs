//! A scenario sheet as JSON: the same shape is drafted, stored, shown once revealed and exported.

mod items;
mod map;
mod read;
mod write;

pub use items::{AgainstDocument, ArmyDocument, WhenDocument, WhoDocument};
pub use items::{
    GradeBandDocument, GradeDocument, ItemDocument, ItemMeasureDocument, JointCapDocument,
};
pub use map::{MarkerDocument, TableDocument, ZoneDocument, ZoneUseDocument};

use league::scenario::{AttackerChoice, Legs};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::mirror_enum::mirror_enum;
use crate::results::RoleDocument;
use crate::share::ShareDocument;

/// One scenario sheet.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ScenarioSheetDocument {
    /// Shown as soon as the title is announced.
    #[schema(example = "Toll at the Ford")]
    pub title: String,
    /// What everyone may read once the sheet is announced.
    pub summary: String,
    /// The whole briefing, hidden parts included.
    pub briefing: String,
    /// Turns of one leg, 1 to 20.
    #[schema(example = 6)]
    pub turns: u8,
    /// Whether the sides do the same.
    pub roles: ScenarioRolesDocument,
    /// How many games it is.
    pub legs: LegsDocument,
    /// What is counted, 1 to 24 items in the order of the form.
    pub items: Vec<ItemDocument>,
    /// Caps over several items of one side.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub joint_caps: Vec<JointCapDocument>,
    /// Largest difference of game points that still is a draw.
    #[serde(default)]
    pub draw_margin: u32,
    /// The table as a map.
    pub table: TableDocument,
}

/// Whether both sides have the same task.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum ScenarioRolesDocument {
    /// Both the same.
    Symmetric,
    /// One attacks, one defends.
    AttackAndDefence {
        /// Share of the opened list that the attacker starts with.
        attacker_fields: ShareDocument,
        /// Share of the opened list that the defender starts with.
        defender_fields: ShareDocument,
        /// Who attacks first.
        attacker: AttackerIsDocument,
        /// The role that is harder to win with.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        harder: Option<RoleDocument>,
    },
}

mirror_enum! {
    /// Who attacks in the first leg.
    AttackerIsDocument is AttackerChoice {
        /// Balanced over the season by the pairing, then drawn.
        Paired,
        /// The player with the lower standing.
        LowerStanding,
        /// The player with the higher standing.
        HigherStanding,
    }
}

mirror_enum! {
    /// The games of a scenario.
    LegsDocument is Legs {
        /// One game.
        One,
        /// Two games with roles swapped, points added.
        TwoSummed,
        /// Two games with roles swapped, each won on its own.
        TwoWonSeparately,
    }
}
