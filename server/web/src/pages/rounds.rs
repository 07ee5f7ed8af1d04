//! Pages about the pairings of a week.

pub mod pairing_desk;
pub mod pairings;
pub mod proof;
pub mod reasons;
pub mod repairs;
