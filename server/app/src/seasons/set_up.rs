//! The life of a season: created, changed while it is a draft, started and ended.

mod carry;
mod create_season;
mod create_season_from;
mod end_season;
mod first_day;
pub(super) mod satisfiable;
mod start_season;
mod update_season;

pub use carry::CarriedPlayers;
pub use create_season::{CreateSeason, MAX_GRACE_MINUTES, create_season};
pub use create_season_from::{CreateSeasonFrom, NextSeason, create_season_from};
pub use end_season::end_season;
pub use first_day::first_day_fault;
pub use league::season::{Carry, LeftOut};
pub use start_season::start_season;
pub use update_season::{UpdateSeason, update_season};
