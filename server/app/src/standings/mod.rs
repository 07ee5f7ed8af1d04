//! The table of any week, with every line behind it, and what may still become of it.

mod close_week;
mod find_board;
mod find_forecast;
mod find_frozen_table;
mod find_ledger;
mod find_rank_history;
mod find_reach;
mod find_standings;
mod find_statistics;
mod find_what_if;
pub(crate) mod freeze;
mod list_awards;
mod named_rows;

pub use close_week::close_week;
pub use find_board::{Board, BoardWeek, find_board};
pub use find_forecast::{SeasonForecast, find_forecast};
pub use find_frozen_table::{FrozenTable, Part, find_frozen_table};
pub use find_ledger::{Ledger, find_ledger};
pub use find_rank_history::find_rank_history;
pub use find_reach::{SeasonReach, find_reach};
pub use find_standings::{SeasonStandings, find_standings};
pub use find_statistics::{FEWEST_GAMES, SeasonStatistics, find_statistics, statistics};
pub use find_what_if::find_what_if;
pub use list_awards::{SeasonAwards, list_awards};
pub use named_rows::named_rows;
pub use store::frozen_tables::Frozen;
