//! The season's list rules as JSON.

mod read;
mod write;

pub use read::read_list_rules;

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::lists::report::SeverityDocument;
use crate::share::ShareDocument;

/// A rule with the weeks it applies in and its weight.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ListRuleDocument {
    /// What is demanded.
    pub rule: RuleDocument,
    /// The weeks it applies in; every week when absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(example = json!([1, 2, 3]))]
    pub weeks: Option<Vec<u8>>,
    /// Whether a list against it is stopped.
    #[serde(default)]
    pub severity: SeverityDocument,
}

/// The kinds of list rule.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum RuleDocument {
    /// A list spends at least so much; a share is of the cap.
    MinimumSpend {
        /// Least points.
        least: AmountDocument,
    },
    /// No single unit costs more, options included; a share is of the cap.
    LargestUnit {
        /// Most points.
        most: AmountDocument,
    },
    /// So many units of a kind.
    KindCount {
        /// Key of the unit kind.
        unit_kind: String,
        /// Fewest.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        least: Option<CountDocument>,
        /// Most.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        most: Option<CountDocument>,
    },
    /// So much of the cap goes into a kind.
    KindShare {
        /// Key of the unit kind.
        unit_kind: String,
        /// Least share of the cap.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        least: Option<ShareDocument>,
        /// Largest share of the cap.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        most: Option<ShareDocument>,
    },
    /// So many of the same unit.
    Copies {
        /// Most entries of one unit.
        most: CountDocument,
        /// The kinds it is about; every kind when absent.
        #[serde(default)]
        of: KindsDocument,
    },
    /// No units of some keywords.
    BannedKeywords {
        /// Keys of the keywords.
        keywords: Vec<String>,
    },
    /// So many units or models in all.
    ArmySize {
        /// What is counted.
        counted: CountedDocument,
        /// Fewest.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        least: Option<u32>,
        /// Most.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        most: Option<u32>,
    },
    /// A player keeps the faction declared for the season.
    FactionLock {},
    /// So much of last week's list returns.
    CarryOver {
        /// Share of last week's points.
        returning: ShareDocument,
        /// Whether a returning unit may have fewer models.
        #[serde(default)]
        may_shrink: bool,
        /// Whether a returning unit may have fewer options.
        #[serde(default)]
        may_drop_options: bool,
    },
    /// So much of last week's list may leave; a share is of last week's points.
    SwapAllowance {
        /// Most points.
        most: AmountDocument,
    },
    /// So much may be new since last week; a share is of the cap.
    NewPoints {
        /// Most points.
        most: AmountDocument,
    },
    /// So many units are new or have grown since last week.
    NewUnits {
        /// Fewest.
        least: u32,
    },
    /// So much of the list's own points is painted.
    PaintedShare {
        /// Least share.
        least: ShareDocument,
    },
}

/// Points, or a share of the whole that the rule names.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum AmountDocument {
    /// So many points.
    Points {
        /// The points.
        points: u32,
    },
    /// Such a share.
    Share {
        /// Numerator.
        part: u64,
        /// Denominator, at least 1.
        whole: u64,
    },
}

/// A count, or one that grows with the cap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum CountDocument {
    /// So many.
    Fixed {
        /// The count.
        count: u32,
    },
    /// One for every full number of points of the cap.
    PerPoints {
        /// The points, at least 1.
        points: u32,
    },
}

/// A choice of unit kinds.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum KindsDocument {
    /// Every kind.
    #[default]
    Every,
    /// These kinds alone.
    Only {
        /// Keys of the kinds, at least one.
        unit_kinds: Vec<String>,
    },
    /// Every kind but these.
    Except {
        /// Keys of the kinds, at least one.
        unit_kinds: Vec<String>,
    },
}

/// What an army size counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum CountedDocument {
    /// Entries of the list.
    Units,
    /// Models of all entries.
    Models,
}
