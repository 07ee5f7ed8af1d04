//! The page cache and what keeps it current.

pub mod cached_page;
pub mod counters;
pub mod league_clock;
pub mod page_cache;
pub mod rebuild;
pub mod season_entry;
pub mod watch;
