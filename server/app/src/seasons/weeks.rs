//! The weeks of a season: their times, caps and scenarios, and what the clock reveals.

mod publish_due_reveals;
mod update_scenario;
mod update_week;

pub use publish_due_reveals::publish_due_reveals;
pub use update_scenario::{RevealAt, UpdateScenario, update_scenario};
pub use update_week::{UpdateWeek, update_week};
