//! The fairness audit of a season as JSON.

use league::pairing::history::audit::{FairnessFinding, FairnessMeasure};
use messages::Message;
use serde::Serialize;
use utoipa::ToSchema;
use uuid::Uuid;

/// One player's value on one measure, against chance.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, ToSchema)]
pub struct FairnessFindingDocument {
    /// Who.
    pub player: Uuid,
    /// What.
    pub measure: FairnessMeasureDocument,
    /// The season's value.
    #[schema(example = 3)]
    pub value: i64,
    /// Sum of the values of all dealt seasons; divided by their number, what chance gives on average.
    pub expected_sum: i64,
    /// Seasons at least as far from the average, the real one counted in.
    pub as_far: u32,
    /// More unusual than chance explains, all tests together.
    pub unusual: bool,
    /// All of it in a sentence.
    pub sentence: String,
}

/// What is compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum FairnessMeasureDocument {
    /// Sum of the opponents' scores.
    OpponentsStrength,
    /// Games as attacker less games as defender.
    Roles,
    /// Games at a table played on before.
    RepeatedTables,
    /// Rounds sat out.
    Byes,
    /// Games on the night that the player had most often.
    SameNight,
}

impl From<FairnessMeasure> for FairnessMeasureDocument {
    fn from(measure: FairnessMeasure) -> Self {
        match measure {
            FairnessMeasure::OpponentsStrength => Self::OpponentsStrength,
            FairnessMeasure::Roles => Self::Roles,
            FairnessMeasure::RepeatedTables => Self::RepeatedTables,
            FairnessMeasure::Byes => Self::Byes,
            FairnessMeasure::SameNight => Self::SameNight,
        }
    }
}

impl FairnessFindingDocument {
    /// A finding with its sentence.
    pub fn new(finding: &FairnessFinding, message: &Message) -> Self {
        Self {
            player: finding.player.0,
            measure: finding.measure.into(),
            value: finding.value,
            expected_sum: finding.expected_sum,
            as_far: finding.as_extreme,
            unusual: finding.unusual,
            sentence: message.to_string(),
        }
    }
}
