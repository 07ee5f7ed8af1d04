//! The comparison of a list with the player's last one, as JSON.

use league::catalogue::key::OptionKey;
use league::lists::{ListChange, ListChangeKind};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::mirror_enum::mirror_enum;

mirror_enum! {
    /// What became of one unit.
    BecameDocument is ListChangeKind {
        /// Not in the last list.
        Added,
        /// More models or options, nothing less.
        Grown,
        /// Fewer models or options, nothing more.
        Shrunk,
        /// More of something and less of something else.
        Refitted,
        /// The same, but the catalogue gives it other points.
        Repriced,
        /// Still in the list, though this week's catalogue does not have the unit.
        Gone,
        /// The same for the same points.
        Unchanged,
        /// In the last list only.
        Left,
    }
}

/// One unit of the collection in the last list and in this one.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct ListChangeDocument {
    /// Key of the entry.
    #[schema(example = "pole-hands-1")]
    pub entry: String,
    /// Key of the unit in the catalogue.
    #[schema(example = "pole-hands")]
    pub unit: String,
    /// As people call it.
    #[schema(example = "Pole-Hands")]
    pub name: String,
    /// What became of it.
    pub became: BecameDocument,
    /// Models in the last list; 0 when it was not there.
    pub models_before: u32,
    /// Models in this list; 0 when it left.
    pub models_now: u32,
    /// Points in the last list, at that week's prices.
    pub points_before: u32,
    /// Points in this list, at this week's prices.
    pub points_now: u32,
    /// Keys of options taken more often than before.
    pub options_gained: Vec<String>,
    /// Keys of options taken less often than before.
    pub options_lost: Vec<String>,
}

impl From<&ListChange> for ListChangeDocument {
    fn from(change: &ListChange) -> Self {
        let words = |keys: &[OptionKey]| keys.iter().map(ToString::to_string).collect();
        Self {
            entry: change.entry.to_string(),
            unit: change.unit.to_string(),
            name: change.name.clone(),
            became: change.kind.into(),
            models_before: change.models_before,
            models_now: change.models_now,
            points_before: change.points_before.get(),
            points_now: change.points_now.get(),
            options_gained: words(&change.options_gained),
            options_lost: words(&change.options_lost),
        }
    }
}
