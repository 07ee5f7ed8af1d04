//! What people do, one file for each use case: may they? load, decide by the rules, save the facts
//! with their trail and messages, all in one transaction. Knows neither HTTP nor SQL.

pub mod accounts;
mod aside;
pub mod catalogues;
mod changes;
pub mod clubs;
mod desk;
mod facts;
mod freshness;
mod handed;
mod keeper;
mod kept;
pub mod lists;
mod may;
pub mod nudges;
pub mod painting;
mod record;
mod refusal;
pub mod results;
pub mod rounds;
pub mod seasons;
mod secret;
pub mod standings;
mod turns;
mod words;

pub use changes::{Change, Changes, Replica, Versions, committing};
pub use desk::{Actor, Desk, Viewer};
pub use freshness::Uptime;
pub use may::Action;
pub use refusal::{Fault, Reason, Refusal};
