//! A season's scoring as JSON.

mod read;
mod write;

use std::collections::BTreeMap;

use league::scoring::MarginUnit;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::mirror_enum::mirror_enum;
use crate::share::ShareDocument;

/// How games, byes, absences and lists become league points.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ScoringDocument {
    /// Games played to the end.
    pub games: GamePointsDocument,
    /// Games given up during play.
    pub concession: ConcessionDocument,
    /// Games that one side did not come to.
    pub no_show: NoShowDocument,
    /// For each side when neither came, or both lose by ruling.
    #[serde(default)]
    pub double_loss: i32,
    /// A week without an opponent.
    pub bye: ByeDocument,
    /// What a late list costs, from the least late upwards.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub late_list: Vec<LateStepDocument>,
    /// For coming to the table, once a week.
    #[serde(default)]
    pub attendance: i32,
    /// Most painted bonus of a week, as a share of a win.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub painting_cap: Option<ShareDocument>,
    /// Most painted bonus and attendance of a week together, as a share of a win.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bonus_cap: Option<ShareDocument>,
    /// How many of a player's best weeks count; all when absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(example = 7)]
    pub best_weeks: Option<u8>,
    /// What a player gets for the weeks before joining.
    pub late_joiner: LateJoinerDocument,
    /// Factor on games and byes of a week, by week number; 1 where none is named.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    #[schema(value_type = BTreeMap<String, u8>, example = json!({"8": 2}))]
    pub weights: BTreeMap<u8, u8>,
}

/// How the score of a game becomes league points.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum GamePointsDocument {
    /// By win, draw and loss.
    WinDrawLoss {
        /// For the winner.
        win: i32,
        /// For each side of a draw.
        draw: i32,
        /// For the loser.
        loss: i32,
        /// Largest difference of game points that still is a draw.
        #[serde(default)]
        draw_margin: u32,
    },
    /// By the margin of the score.
    Bands {
        /// What margins are measured in.
        unit: MarginUnitDocument,
        /// What winner and loser share out in every band, when that is declared.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        sum: Option<i32>,
        /// From margin zero upwards, without gap or overlap.
        bands: Vec<BandDocument>,
    },
}

mirror_enum! {
    /// What margins are measured in.
    MarginUnitDocument is MarginUnit {
        /// Game points as they are.
        GamePoints,
        /// Game points in percent of the week's cap.
        PercentOfCap,
    }
}

/// League points for a range of margins.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct BandDocument {
    /// Smallest margin.
    pub from: u32,
    /// Largest margin; absent for the last band, which is open.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<u32>,
    /// For the side with more.
    pub winner: i32,
    /// For the other.
    pub loser: i32,
}

/// A game given up during play counts by its score within these limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ConcessionDocument {
    /// Least for the side that played on.
    pub winner_at_least: i32,
    /// Most for the side that gave up.
    pub loser_at_most: i32,
}

/// League points when one side did not come.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NoShowDocument {
    /// For the side that came.
    pub present: i32,
    /// For the other, with word in time.
    pub absent_with_notice: i32,
    /// For the other, without.
    pub absent_without_notice: i32,
}

/// The value of a bye.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum ByeDocument {
    /// Always the same.
    Fixed {
        /// League points.
        points: i32,
    },
    /// As much as the best win.
    Win,
    /// The average of the player's own played games so far, rounded down.
    OwnAverage {
        /// Never less than this.
        floor: i32,
    },
}

/// What a list costs that comes this late.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LateStepDocument {
    /// From so many minutes after the deadline.
    #[schema(example = 60)]
    pub from_minutes: u32,
    /// League points taken off.
    #[schema(example = 1)]
    pub penalty: i32,
}

/// What a player gets for each week before joining.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum LateJoinerDocument {
    /// Nothing.
    Nothing,
    /// Always the same.
    Fixed {
        /// League points.
        points: i32,
    },
    /// The median of that week less something, never below zero.
    MedianLess {
        /// League points taken off.
        less: i32,
    },
}
