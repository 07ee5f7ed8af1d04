//! The table of any week, with every line behind it, and what may still become of it.

mod board;
mod close_week;
mod find_attendance;
mod find_board;
mod find_forecast;
mod find_frozen_table;
mod find_ledger;
mod find_rank_history;
mod find_reach;
mod find_standings;
mod find_statistics;
mod find_what_if;
mod forecast_cache;
pub(crate) mod freeze;
mod list_awards;
mod named_rows;

pub use board::{Board, BoardWeek};
pub use close_week::close_week;
pub use find_attendance::{SeasonAttendance, find_attendance};
pub use find_board::find_board;
pub use find_forecast::find_forecast;
pub use find_frozen_table::{FrozenTable, TablePart, find_frozen_table};
pub use find_ledger::{PlayerLedger, find_ledger};
pub use find_rank_history::find_rank_history;
pub use find_reach::{SeasonReach, find_reach};
pub use find_standings::{SeasonStandings, find_standings};
pub use find_statistics::{MIN_GAMES, SeasonStatistics, board_statistics, find_statistics};
pub use find_what_if::find_what_if;
pub(crate) use forecast_cache::ForecastCache;
pub use forecast_cache::SeasonForecast;
pub use list_awards::{SeasonAwards, list_awards};
pub use named_rows::named_rows;
pub use store::frozen_tables::FrozenTableMeta;
