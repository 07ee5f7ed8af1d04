//! The public export of a season: everything that may be known of it, in one file that anybody can
//! check offline.

mod repairs;
mod round_robin;
mod sums;
mod tables;
mod verify;

pub use tables::ExportTable;
pub use verify::{Verification, verify};

use chrono::{DateTime, NaiveDateTime, Utc};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use crate::civil::CivilDocument;
use crate::lists::receipt::SealedList;
use crate::painting::brought::BroughtUnitDocument;
use crate::painting::claim::ClaimDocument;
use crate::results::SlipDocument;
use crate::rounds::proposal::ProposalDocument;
use crate::rounds::repair::RepairDocument;
use crate::rounds::task::TaskDocument;
use crate::season::policy::PolicyDocument;
use crate::season::scenario::ScenarioSheetDocument;
use crate::table::standings::StandingsDocument;
use crate::table::statistics::AwardedDocument;

/// The format that this program writes.
pub const FORMAT: u8 = 1;

/// A season as it may be known at one version.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SeasonExportDocument {
    /// Format of this file.
    #[schema(example = 1)]
    pub format: u8,
    /// The season.
    pub season: Uuid,
    /// Its name.
    pub name: String,
    /// IANA zone of its civil times.
    pub zone: String,
    /// The version that the file was made from.
    pub version: i64,
    /// SHA-256 of the secret seed of the draws, in hexadecimal; known from the start on.
    pub seed_commitment: Option<String>,
    /// The seed in hexadecimal, once the season has ended.
    pub seed: Option<String>,
    /// The rules.
    pub policy: PolicyDocument,
    /// Everybody who ever joined.
    pub players: Vec<PlayerRecordDocument>,
    /// The weeks in order.
    pub weeks: Vec<WeekRecordDocument>,
    /// The table after the last paired week, with every line behind it.
    pub standings: StandingsDocument,
    /// The claims of weeks whose lists are opened, in the order in which they were made.
    #[serde(default)]
    pub painting: Vec<ClaimDocument>,
    /// The prizes, so far or for good once the season has ended.
    #[serde(default)]
    pub awards: Vec<AwardedDocument>,
}

/// A player.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PlayerRecordDocument {
    /// Identity in the season.
    pub id: Uuid,
    /// Name in the season.
    pub handle: String,
    /// Key of the faction.
    pub faction: String,
    /// First week played.
    pub joined_week: u8,
    /// Last week played, once withdrawn; 0 before the first.
    pub left_after_week: Option<u8>,
    /// Units of opened lists that were brought from an earlier season, with their paint.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub brought: Vec<BroughtUnitDocument>,
    /// Number in the table of a round robin.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seat: Option<u8>,
}

/// A week.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct WeekRecordDocument {
    /// Its number.
    pub week: u8,
    /// The points cap.
    pub cap: u32,
    /// The deadline on the wall of the club.
    #[schema(value_type = CivilDocument)]
    pub lists_due: NaiveDateTime,
    /// The scenario, where it is revealed in full.
    pub scenario: Option<ScenarioSheetDocument>,
    /// The lists, once opened.
    pub lists: Vec<ListRecordDocument>,
    /// The published rounds, every version of each.
    pub rounds: Vec<RoundRecordDocument>,
    /// The games and byes of these rounds.
    pub games: Vec<GameRecordDocument>,
}

/// An opened list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ListRecordDocument {
    /// Whose.
    pub player: Uuid,
    /// What was sealed, with its salt.
    pub contents: SealedList,
    /// The receipt: SHA-256 of the canonical JSON of `contents`.
    pub receipt: String,
    /// When it was sealed.
    pub sealed_at: DateTime<Utc>,
    /// Minutes after the end of the grace, when late.
    pub late_minutes: Option<u32>,
    /// The week before's list, put in because none came.
    pub stands_in: bool,
}

/// A published round.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct RoundRecordDocument {
    /// Identity.
    pub round: Uuid,
    /// Which of the week's rounds.
    #[serde(default = "first")]
    pub number: u8,
    /// 1 as it was drawn; each repair is one more.
    #[serde(default = "first")]
    pub version: u8,
    /// What it repairs, and why.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub repair: Option<RepairDocument>,
    /// All that the pairing depends on, but for the season's secret.
    pub inputs: TaskDocument,
    /// HMAC-SHA-256 of the digest of the inputs under the seed, in hexadecimal.
    pub draw: String,
    /// What followed.
    pub proposal: ProposalDocument,
    /// When it was published.
    pub published_at: DateTime<Utc>,
}

/// A game or bye.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct GameRecordDocument {
    /// Identity.
    pub game: Uuid,
    /// Of which round.
    pub round: Uuid,
    /// Who sits out, or the first of two.
    pub first: Uuid,
    /// The opponent; absent for a bye.
    pub second: Option<Uuid>,
    /// Short name of the night.
    pub night: Option<String>,
    /// Number of the table.
    pub table: Option<u16>,
    /// The slip.
    pub slip: SlipDocument,
    /// Version of the result.
    pub version: u32,
}

fn first() -> u8 {
    1
}
