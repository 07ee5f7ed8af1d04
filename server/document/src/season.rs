//! How a season is set up, as JSON: calendar, policy, scoring, tie-breaks and scenario sheets.

pub mod calendar;
pub mod policy;
pub mod scenario;
pub mod scoring;
pub mod tie_breaks;
