//! The application layer: one file for each use case. Each authorizes the actor, loads what it needs,
//! decides by the rules of `league`, and saves the outcome with its trail entry in one transaction.
//! Knows neither HTTP nor SQL.

mod access;
pub mod accounts;
mod actor;
mod app;
pub mod catalogues;
mod change_bus;
mod changes;
pub mod clubs;
mod freshness;
pub mod lists;
mod load_season;
mod loaded_season;
pub mod painting;
mod refusal;
pub mod reminders;
pub mod results;
pub mod rounds;
mod run_blocking;
mod season_change;
pub mod seasons;
mod secret;
pub mod standings;
mod transaction;
mod user_text;
mod versioned_cache;
mod work_queue;

pub use access::Action;
pub use actor::{Actor, Viewer};
pub use app::App;
pub use change_bus::{ChangeListener, CommittedChange};
pub use changes::{Change, ChangeStream, ReplicaStatus, SeasonVersions};
pub use freshness::Uptime;
pub use refusal::{Fault, Reason, Refusal, UnavailableCause};
