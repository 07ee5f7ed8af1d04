//! The table as data for a map. Lengths are whole centimetres from the upper left corner.

use league::scenario::ZoneUse;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::mirror_enum::mirror_enum;

/// A table with its zones and markers.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TableDocument {
    /// From left to right, at most 600.
    #[schema(example = 120)]
    pub width: u16,
    /// From top to bottom, at most 600.
    #[schema(example = 120)]
    pub depth: u16,
    /// Areas with a use.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub zones: Vec<ZoneDocument>,
    /// Places to hold.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub markers: Vec<MarkerDocument>,
}

/// A rectangle with a use.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ZoneDocument {
    /// What the map says.
    pub label: String,
    /// What it is for.
    pub purpose: ZoneUseDocument,
    /// Distance of its left edge.
    pub left: u16,
    /// Distance of its upper edge.
    pub top: u16,
    /// From left to right.
    pub width: u16,
    /// From top to bottom.
    pub depth: u16,
}

mirror_enum! {
    /// What a zone is for.
    ZoneUseDocument is ZoneUse {
        /// The side named first, or the attacker, starts here.
        FirstDeploys,
        /// The side named second, or the defender, starts here.
        SecondDeploys,
        /// Units leave the table here.
        Exit,
        /// Ground with rules of its own.
        Ground,
    }
}

/// A place to hold.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct MarkerDocument {
    /// What the map says.
    pub label: String,
    /// Distance from the left edge.
    pub left: u16,
    /// Distance from the upper edge.
    pub top: u16,
}
