//! The identity of a node of the blossom structure.

/// A vertex, or from the number of vertices on a blossom.
pub type NodeId = u32;

/// No vertex, no blossom.
pub const NONE: u32 = u32::MAX;
