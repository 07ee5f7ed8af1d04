//! How values are written for people: instants, numbers, roles, factions.

pub mod factions;
pub mod local_time;
pub mod numbers;
pub mod roles;
