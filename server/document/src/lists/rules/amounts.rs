//! The amounts, counts and choices of list rules as JSON.

use league::lists::rules::Counted;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::mirror_enum::mirror_enum;

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

mirror_enum! {
    /// What an army size counts.
    CountedDocument is Counted {
        /// Entries of the list.
        Units,
        /// Models of all entries.
        Models,
    }
}
