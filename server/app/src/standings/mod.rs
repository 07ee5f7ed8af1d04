//! The table of any week, with every line behind it.

mod close_week;
mod find_ledger;
mod find_rank_history;
mod find_standings;

pub use close_week::close_week;
pub use find_ledger::{Ledger, find_ledger};
pub use find_rank_history::find_rank_history;
pub use find_standings::{SeasonStandings, find_standings};
