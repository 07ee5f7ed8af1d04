//! Pages of the painting log.

pub mod log;
pub mod photos;
