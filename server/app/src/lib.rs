//! What people do, one file for each use case: may they? load, decide by the rules, save the facts
//! with their trail and messages, all in one transaction. Knows neither HTTP nor SQL.

pub mod accounts;
pub mod clubs;
mod desk;
mod may;
mod record;
mod refusal;
mod secret;

pub use desk::{Actor, Desk, Viewer};
pub use may::Action;
pub use refusal::{Fault, Reason, Refusal};
