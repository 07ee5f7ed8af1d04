//! When a season is over: what stays of it, and how the next one begins.

mod archive;
mod next_season;
pub mod over;
