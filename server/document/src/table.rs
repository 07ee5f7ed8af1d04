//! The league table as JSON: standings, the ledger behind them, and statistics.

pub mod ledger;
pub mod standings;
pub mod statistics;
