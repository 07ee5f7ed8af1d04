//! A catalogue as JSON: the same shape is imported, stored and exported.

pub mod changes;

use league::catalogue::draft::{CatalogueDraft, FactionDraft, OptionDraft, SizeDraft, UnitDraft};
use league::catalogue::fault::CatalogueFault;
use league::catalogue::unit::{OptionPrice, Unit, UnitOption};
use league::catalogue::{Catalogue, Faction};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::fault::DocumentFault;

/// One version of a catalogue.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CatalogueDocument {
    /// 1 to 100 factions.
    pub factions: Vec<FactionDocument>,
}

/// The units of one faction.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FactionDocument {
    /// Lower-case words joined by hyphens, unique in the catalogue.
    #[schema(example = "sluicebond-syndics")]
    pub key: String,
    /// As people call it.
    #[schema(example = "Sluicebond Syndics")]
    pub name: String,
    /// 1 to 500 units.
    pub units: Vec<UnitDocument>,
}

/// One unit.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct UnitDocument {
    /// Lower-case words joined by hyphens, unique in the faction.
    #[schema(example = "pole-hands")]
    pub key: String,
    /// As people call it.
    #[schema(example = "Pole-Hands")]
    pub name: String,
    /// The unit kind, a key of the catalogue's own choice.
    #[schema(example = "line")]
    pub kind: String,
    /// Keys that rules and joining leaders refer to.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub keywords: Vec<String>,
    /// The sizes it comes in, each with its own points.
    pub sizes: Vec<SizeDocument>,
    /// What it may take.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub options: Vec<OptionDocument>,
    /// A leader with this may join a unit that carries the keyword.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub joins: Option<String>,
    /// Most entries of this unit in one list.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most_per_army: Option<i64>,
    /// Painting time of one model, in minutes.
    #[schema(example = 25)]
    pub minutes_per_model: i64,
}

/// One size of a unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SizeDocument {
    /// Models in the unit.
    #[schema(example = 8)]
    pub models: i64,
    /// Points at this size.
    #[schema(example = 64)]
    pub points: i64,
}

/// One option of a unit.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct OptionDocument {
    /// Lower-case words joined by hyphens, unique in the unit.
    #[schema(example = "pennant")]
    pub key: String,
    /// As people call it.
    #[schema(example = "pennant")]
    pub name: String,
    /// Points of taking it once.
    #[schema(example = 10)]
    pub points: i64,
    /// Whether the points are for each model of the unit.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub per_model: bool,
    /// How often the unit may take it; 1 when absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limit: Option<i64>,
    /// Options of one group exclude each other.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub group: Option<String>,
}

impl TryFrom<CatalogueDocument> for Catalogue {
    type Error = Vec<DocumentFault>;

    fn try_from(document: CatalogueDocument) -> Result<Self, Vec<DocumentFault>> {
        Self::build(&document.into())
            .map_err(|faults| faults.into_iter().map(DocumentFault::from).collect())
    }
}

impl From<CatalogueFault> for DocumentFault {
    fn from(fault: CatalogueFault) -> Self {
        Self::new(fault.pointer, fault.kind.code(), fault.kind.message())
    }
}

impl From<CatalogueDocument> for CatalogueDraft {
    fn from(document: CatalogueDocument) -> Self {
        Self {
            factions: document.factions.into_iter().map(Into::into).collect(),
        }
    }
}

impl From<FactionDocument> for FactionDraft {
    fn from(document: FactionDocument) -> Self {
        Self {
            key: document.key,
            name: document.name,
            units: document.units.into_iter().map(Into::into).collect(),
        }
    }
}

impl From<UnitDocument> for UnitDraft {
    fn from(document: UnitDocument) -> Self {
        Self {
            key: document.key,
            name: document.name,
            kind: document.kind,
            keywords: document.keywords,
            sizes: document
                .sizes
                .into_iter()
                .map(|SizeDocument { models, points }| SizeDraft { models, points })
                .collect(),
            options: document.options.into_iter().map(Into::into).collect(),
            joins: document.joins,
            most_per_army: document.most_per_army,
            minutes_per_model: document.minutes_per_model,
        }
    }
}

impl From<OptionDocument> for OptionDraft {
    fn from(document: OptionDocument) -> Self {
        Self {
            key: document.key,
            name: document.name,
            points: document.points,
            per_model: document.per_model,
            limit: document.limit,
            group: document.group,
        }
    }
}

impl From<&Catalogue> for CatalogueDocument {
    fn from(catalogue: &Catalogue) -> Self {
        Self {
            factions: catalogue.factions().iter().map(Into::into).collect(),
        }
    }
}

impl From<&Faction> for FactionDocument {
    fn from(faction: &Faction) -> Self {
        Self {
            key: faction.key().to_string(),
            name: faction.name().to_string(),
            units: faction.units().iter().map(Into::into).collect(),
        }
    }
}

impl From<&Unit> for UnitDocument {
    fn from(unit: &Unit) -> Self {
        Self {
            key: unit.key.to_string(),
            name: unit.name.to_string(),
            kind: unit.kind.to_string(),
            keywords: unit.keywords.iter().map(ToString::to_string).collect(),
            sizes: unit
                .sizes
                .iter()
                .map(|size| SizeDocument {
                    models: size.models.into(),
                    points: size.points.get().into(),
                })
                .collect(),
            options: unit.options.iter().map(Into::into).collect(),
            joins: unit.joins.as_ref().map(ToString::to_string),
            most_per_army: unit.most_per_army.map(Into::into),
            minutes_per_model: unit.minutes_per_model.into(),
        }
    }
}

impl From<&UnitOption> for OptionDocument {
    fn from(option: &UnitOption) -> Self {
        let (points, per_model) = match option.price {
            OptionPrice::PerUnit(points) => (points, false),
            OptionPrice::PerModel(points) => (points, true),
        };
        Self {
            key: option.key.to_string(),
            name: option.name.to_string(),
            points: points.get().into(),
            per_model,
            limit: (option.limit != 1).then_some(option.limit.into()),
            group: option.group.as_ref().map(ToString::to_string),
        }
    }
}
