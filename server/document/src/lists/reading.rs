//! The reading of a pasted text as JSON: what was understood of each line.

use league::lists::reader::{Certainty, LinePart, Meaning, ReadLine, Reading};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::lists::army_list::ArmyListDocument;
use crate::lists::report::FindingDocument;

/// What came of a text.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct ReadingDocument {
    /// Every line of the text.
    pub lines: Vec<ReadLineDocument>,
    /// The list as far as it was understood or guessed; absent without a faction.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub list: Option<ArmyListDocument>,
    /// Stated points and factions that disagree with the catalogue.
    pub findings: Vec<FindingDocument>,
}

/// One line of a text.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct ReadLineDocument {
    /// Counted from 1.
    #[schema(example = 4)]
    pub number: usize,
    /// The line as it stands.
    #[schema(example = "2x Rushlight Kin, 6 models, marsh gas: 120")]
    pub text: String,
    /// As sure as its least sure part.
    pub certainty: CertaintyDocument,
    /// The parts in order; none when nothing but marks stands there.
    pub parts: Vec<PartDocument>,
}

/// A part of a line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct PartDocument {
    /// The text as it stands.
    #[schema(example = "2x Rushlight Kin")]
    pub text: String,
    /// How sure the reading is.
    pub certainty: CertaintyDocument,
    /// What it means.
    pub meaning: MeaningDocument,
    /// Of a guess: what else it could mean.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub alternatives: Vec<String>,
}

/// How sure a reading is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum CertaintyDocument {
    /// It says so.
    Understood,
    /// It probably means so.
    Guessed,
    /// It means nothing that the reader knows.
    NotUnderstood,
}

/// What a part of a line means.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum MeaningDocument {
    /// The faction of the list.
    Faction {
        /// Its key.
        faction: String,
    },
    /// A heading: units of a kind follow.
    UnitKind {
        /// Key of the kind.
        unit_kind: String,
    },
    /// A unit, as one or more entries of the list.
    Unit {
        /// Key of the unit.
        unit: String,
        /// Name of the unit.
        name: String,
        /// Models of each entry.
        models: u32,
        /// Keys of the entries made of it.
        entries: Vec<String>,
    },
    /// A unit that the list cannot have, since it belongs to another faction.
    ForeignUnit {
        /// Key of its faction.
        faction: String,
        /// Name of the unit.
        name: String,
    },
    /// An option of the unit before.
    Option {
        /// Key of the option.
        option: String,
        /// Name of the option.
        name: String,
        /// How often each entry takes it.
        taken: u32,
    },
    /// The unit before has so many models.
    Models {
        /// The models.
        models: u32,
    },
    /// There are so many of the unit before.
    Times {
        /// How many.
        times: u32,
    },
    /// The unit before joins another.
    Joins {
        /// Key of the unit joined.
        unit: String,
    },
    /// Points said of the unit, option or heading before.
    StatedPoints {
        /// The points.
        points: u32,
    },
    /// Points said of the whole list.
    StatedTotal {
        /// The points.
        points: u32,
    },
    /// A cap that is said.
    StatedCap {
        /// The points.
        points: u32,
    },
    /// A word that only introduces what follows.
    Label,
    /// Nothing that the reader knows.
    Nothing,
}

impl From<&Reading> for ReadingDocument {
    fn from(reading: &Reading) -> Self {
        Self {
            lines: reading.lines.iter().map(Into::into).collect(),
            list: reading.list.as_ref().map(Into::into),
            findings: reading.findings.iter().map(Into::into).collect(),
        }
    }
}

impl From<&ReadLine> for ReadLineDocument {
    fn from(line: &ReadLine) -> Self {
        Self {
            number: line.number,
            text: line.text.clone(),
            certainty: line.certainty().into(),
            parts: line.parts.iter().map(Into::into).collect(),
        }
    }
}

impl From<&LinePart> for PartDocument {
    fn from(part: &LinePart) -> Self {
        Self {
            text: part.text.clone(),
            certainty: part.certainty.into(),
            meaning: (&part.meaning).into(),
            alternatives: part.alternatives.iter().map(ToString::to_string).collect(),
        }
    }
}

impl From<Certainty> for CertaintyDocument {
    fn from(certainty: Certainty) -> Self {
        match certainty {
            Certainty::Understood => Self::Understood,
            Certainty::Guessed => Self::Guessed,
            Certainty::NotUnderstood => Self::NotUnderstood,
        }
    }
}

impl From<&Meaning> for MeaningDocument {
    fn from(meaning: &Meaning) -> Self {
        match meaning {
            Meaning::Faction(faction) => Self::Faction {
                faction: faction.to_string(),
            },
            Meaning::Kind(kind) => Self::UnitKind {
                unit_kind: kind.to_string(),
            },
            Meaning::Unit {
                unit,
                name,
                models,
                entries,
            } => Self::Unit {
                unit: unit.to_string(),
                name: name.clone(),
                models: *models,
                entries: entries.iter().map(ToString::to_string).collect(),
            },
            Meaning::ForeignUnit { faction, name } => Self::ForeignUnit {
                faction: faction.to_string(),
                name: name.clone(),
            },
            Meaning::Option {
                option,
                name,
                taken,
            } => Self::Option {
                option: option.to_string(),
                name: name.clone(),
                taken: *taken,
            },
            Meaning::Models(models) => Self::Models { models: *models },
            Meaning::Times(times) => Self::Times { times: *times },
            Meaning::Joins(unit) => Self::Joins {
                unit: unit.to_string(),
            },
            Meaning::StatedPoints(points) => Self::StatedPoints {
                points: points.get(),
            },
            Meaning::StatedTotal(points) => Self::StatedTotal {
                points: points.get(),
            },
            Meaning::StatedCap(points) => Self::StatedCap {
                points: points.get(),
            },
            Meaning::Label => Self::Label,
            Meaning::Nothing => Self::Nothing,
        }
    }
}
