//! One round as data: the locked inputs, the proposal with its proof, and what a repair changes.

pub mod certificate;
pub mod changes;
pub mod cost;
pub mod draw;
mod explanations;
pub mod game;
pub mod game_changes;
pub mod hall;
pub mod households;
pub mod method;
pub mod neutrality;
pub mod occupied_tables;
pub mod orders;
pub mod proposal;
pub mod reason;
pub mod repair;
pub mod repairable;
pub mod roles;
pub mod task;
pub mod week_nights;
pub mod wishes;
