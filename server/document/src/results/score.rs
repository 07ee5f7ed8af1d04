//! Counts and scores as JSON: what is typed, and what the server computes from it.

use std::collections::BTreeMap;

use league::catalogue::key::ItemKey;
use league::points::Points;
use league::result::{
    CountFault, CountFaultKind, GameCounts, GameScore, ItemScore, LegScore, SideCounts, Verdict,
};
use league::side::{PerSide, Side};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::sides::{BothDocument, SideDocument};
use crate::fault::{DocumentFault, ok_or_note};

/// Everything typed for one game.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CountsDocument {
    /// One for each leg of the sheet.
    pub legs: Vec<BothDocument<SideCountsDocument>>,
}

/// What was typed for one side in one leg.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SideCountsDocument {
    /// A count by item key, or army points for a share of an army; a missing item counts nothing.
    #[serde(default)]
    #[schema(example = json!({"ford-marker": 5, "destroyed": 120}))]
    pub items: BTreeMap<String, u32>,
    /// Army points that started the leg, where the side left more out than its role asks.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub started: Option<u32>,
}

/// The score of a game.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct GameScoreDocument {
    /// Leg by leg.
    pub legs: Vec<LegScoreDocument>,
    /// Game points of each side; legs won where the sheet says so.
    pub total: BothDocument<u32>,
    /// Who won by the sheet's draw margin.
    pub verdict: VerdictDocument,
}

/// The score of one leg.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct LegScoreDocument {
    /// In the order of the sheet.
    pub items: Vec<ItemScoreDocument>,
    /// Game points of each side.
    pub total: BothDocument<u32>,
}

/// What one item gave.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct ItemScoreDocument {
    /// Key of the item.
    pub item: String,
    /// What was typed.
    pub counts: BothDocument<Option<u32>>,
    /// Game points, caps applied.
    pub points: BothDocument<u32>,
}

/// Who won.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum VerdictDocument {
    /// The side named first.
    First,
    /// The side named second.
    Second,
    /// Nobody.
    Drawn,
}

/// A count that cannot be.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct ImpossibleDocument {
    /// JSON Pointer (RFC 6901) into the counts.
    #[schema(example = "/legs/0/first/items/ford-marker")]
    pub pointer: String,
    /// Stable code.
    #[schema(example = "result.over-most")]
    pub code: String,
    /// The most allowed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limit: Option<u32>,
    /// What was typed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub actual: Option<u32>,
    /// The reason in plain English.
    pub detail: String,
}

impl TryFrom<CountsDocument> for GameCounts {
    type Error = Vec<DocumentFault>;

    fn try_from(document: CountsDocument) -> Result<Self, Vec<DocumentFault>> {
        let mut faults = Vec::new();
        let legs = document.legs.iter().enumerate();
        let legs = legs.map(|(leg, counts)| {
            let mut side = |side: SideDocument, counts| {
                read_side(
                    counts,
                    &format!("/legs/{leg}/{}", side.as_str()),
                    &mut faults,
                )
            };
            let first = side(SideDocument::First, &counts.first);
            PerSide::new(first, side(SideDocument::Second, &counts.second))
        });
        let legs = legs.collect();
        if faults.is_empty() {
            Ok(Self { legs })
        } else {
            Err(faults)
        }
    }
}

fn read_side(
    document: &SideCountsDocument,
    at: &str,
    faults: &mut Vec<DocumentFault>,
) -> SideCounts {
    let items = document.items.iter().filter_map(|(key, &count)| {
        let pointer = format!("{at}/items/{}", key.replace('~', "~0").replace('/', "~1"));
        let key = ok_or_note(
            faults,
            pointer,
            "result.unknown-item",
            ItemKey::new(key).map_err(|fault| fault.message()),
        );
        key.map(|key| (key, count))
    });
    SideCounts {
        items: items.collect(),
        started: document.started.map(Points::new),
    }
}

impl From<&GameScore> for GameScoreDocument {
    fn from(score: &GameScore) -> Self {
        Self {
            legs: score.legs.iter().map(Into::into).collect(),
            total: score.total.into(),
            verdict: score.verdict.into(),
        }
    }
}

impl From<&LegScore> for LegScoreDocument {
    fn from(leg: &LegScore) -> Self {
        let item = |item: &ItemScore| ItemScoreDocument {
            item: item.item.to_string(),
            counts: item.counts.into(),
            points: item.points.into(),
        };
        Self {
            items: leg.items.iter().map(item).collect(),
            total: leg.total.into(),
        }
    }
}

impl TryFrom<GameScoreDocument> for GameScore {
    type Error = Vec<DocumentFault>;

    fn try_from(document: GameScoreDocument) -> Result<Self, Vec<DocumentFault>> {
        let mut faults = Vec::new();
        let legs = document
            .legs
            .into_iter()
            .enumerate()
            .map(|(leg, document)| {
                let items = document
                    .items
                    .into_iter()
                    .enumerate()
                    .filter_map(|(at, item)| {
                        let pointer = format!("/legs/{leg}/items/{at}/item");
                        let key = ItemKey::new(&item.item).map_err(|fault| fault.message());
                        Some(ItemScore {
                            item: ok_or_note(&mut faults, pointer, "result.unknown-item", key)?,
                            counts: item.counts.into(),
                            points: item.points.into(),
                        })
                    });
                LegScore {
                    items: items.collect(),
                    total: document.total.into(),
                }
            });
        let legs = legs.collect();
        if !faults.is_empty() {
            return Err(faults);
        }
        Ok(Self {
            legs,
            total: document.total.into(),
            verdict: document.verdict.into(),
        })
    }
}

impl From<Verdict> for VerdictDocument {
    fn from(verdict: Verdict) -> Self {
        match verdict {
            Verdict::Won(Side::First) => Self::First,
            Verdict::Won(Side::Second) => Self::Second,
            Verdict::Drawn => Self::Drawn,
        }
    }
}

impl From<VerdictDocument> for Verdict {
    fn from(document: VerdictDocument) -> Self {
        match document {
            VerdictDocument::First => Self::Won(Side::First),
            VerdictDocument::Second => Self::Won(Side::Second),
            VerdictDocument::Drawn => Self::Drawn,
        }
    }
}

impl From<&CountFault> for ImpossibleDocument {
    fn from(impossible: &CountFault) -> Self {
        let mut pointer = format!("/legs/{}", impossible.leg);
        if let Some(side) = impossible.side {
            pointer = format!("{pointer}/{}", SideDocument::from(side).as_str());
        }
        match (impossible.side, impossible.kind.item()) {
            (Some(_), Some(item)) => pointer = format!("{pointer}/items/{item}"),
            (Some(_), None) => pointer += "/started",
            (None, _) => {}
        }
        let (limit, actual) = match impossible.kind {
            CountFaultKind::OverMost { limit, actual, .. } => (Some(limit), Some(actual)),
            CountFaultKind::OverArmy { limit, actual, .. }
            | CountFaultKind::OverField { limit, actual } => {
                (Some(limit.get()), Some(actual.get()))
            }
            CountFaultKind::Legs { limit, actual } => {
                (u32::try_from(limit).ok(), u32::try_from(actual).ok())
            }
            CountFaultKind::UnknownItem(_)
            | CountFaultKind::OtherRole(_)
            | CountFaultKind::Computed(_) => (None, None),
        };
        Self {
            pointer,
            code: impossible.kind.code().to_owned(),
            limit,
            actual,
            detail: impossible.message().to_string(),
        }
    }
}
