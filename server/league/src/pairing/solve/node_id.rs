//! The identity of a node of the blossom structure.

/// A place, or from the number of places on a blossom.
pub type Item = u32;

/// No place, no blossom.
pub const NONE: u32 = u32::MAX;
