//! Score items as JSON.

use league::scenario::{ArmyOwner, ScoringTime, ShareBase};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::mirror_enum::mirror_enum;
use crate::share::ShareDocument;

/// One thing that is counted.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ItemDocument {
    /// Lower-case words joined by hyphens, unique on the sheet.
    #[schema(example = "ford-marker")]
    pub key: String,
    /// What the form says.
    #[schema(example = "Ford marker held")]
    pub label: String,
    /// Which side scores it.
    #[serde(default)]
    pub who: WhoDocument,
    /// When it is counted.
    pub when: WhenDocument,
    /// How a count becomes game points.
    pub measure: ItemMeasureDocument,
}

/// The sides that may score an item.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum WhoDocument {
    /// Each side for itself.
    #[default]
    Either,
    /// The attacker alone.
    Attacker,
    /// The defender alone.
    Defender,
}

mirror_enum! {
    /// When an item is counted.
    WhenDocument is ScoringTime {
        /// As it happens, turn by turn.
        DuringPlay,
        /// Once, at the end of the last turn.
        LastTurn,
    }
}

/// How a count becomes game points.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum ItemMeasureDocument {
    /// So many points for each.
    Count {
        /// Game points for one.
        points_each: u32,
        /// Largest possible count of one side; of both together when `exclusive`.
        most: u32,
        /// Only one side can hold each.
        #[serde(default)]
        exclusive: bool,
        /// Most game points from this item in one leg.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        cap: Option<u32>,
    },
    /// Army points, graded by the share they make.
    ArmyShare {
        /// Whose units are added up.
        army: ArmyDocument,
        /// What the sum is a share of.
        against: AgainstDocument,
        /// What a share is worth.
        grade: GradeDocument,
    },
    /// What the opponent's item leaves of a fixed sum.
    RestOf {
        /// Key of the opponent's item.
        item: String,
        /// Game points shared out by the two items.
        out_of: u32,
    },
}

mirror_enum! {
    /// Whose units are added up.
    ArmyDocument is ArmyOwner {
        /// The scoring side's own.
        Own,
        /// The opponent's.
        Opposing,
    }
}

mirror_enum! {
    /// What an army share is a share of.
    AgainstDocument is ShareBase {
        /// The points that army started the leg with.
        StartingPoints,
        /// The cap of the week.
        Cap,
    }
}

/// What a share is worth in game points.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum GradeDocument {
    /// So many points for every full step.
    PerStep {
        /// The step.
        step: ShareDocument,
        /// Game points for one.
        points_each: u32,
        /// Most game points.
        cap: u32,
    },
    /// The points of the highest band reached.
    Bands {
        /// From the lowest share upwards.
        bands: Vec<GradeBandDocument>,
    },
}

/// One band.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct GradeBandDocument {
    /// Share from which it holds.
    pub from: ShareDocument,
    /// What it is worth in game points.
    pub points: u32,
}

/// A cap over several items of one side in one leg.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct JointCapDocument {
    /// Keys of two or more items.
    pub items: Vec<String>,
    /// Most game points from all of them.
    pub cap: u32,
}
