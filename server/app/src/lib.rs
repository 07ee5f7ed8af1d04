//! What people do, one file for each use case: may they? load, decide by the rules, save the facts
//! with their trail and messages, all in one transaction. Knows neither HTTP nor SQL.

pub mod accounts;
pub mod catalogues;
pub mod clubs;
mod desk;
pub mod lists;
mod may;
mod record;
mod refusal;
pub mod seasons;
mod secret;

pub use desk::{Actor, Desk, Viewer};
pub use may::Action;
pub use refusal::{Fault, Reason, Refusal};
