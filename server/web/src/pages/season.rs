//! Pages of a season.

pub mod as_of_query;
pub mod attendance;
pub mod board;
pub mod certificate;
pub mod context;
pub mod downloads;
pub mod ending;
pub mod mine;
pub mod opponents;
pub mod overview;
pub mod player;
pub mod reminders;
pub mod season_page;
pub mod standings;
pub mod statistics;
pub mod trail;
pub mod wall;
