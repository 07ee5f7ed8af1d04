//! What refusals say in German.

pub mod details;
pub mod refusals;
