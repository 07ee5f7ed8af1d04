//! The search for the best pairing of a task: branch and bound over minimum-cost matchings.
//!
//! Read [`propose()`] first, then `decide`, `branch_and_bound` and `sparse`.

mod branch_and_bound;
mod candidates;
pub mod cost_table;
mod decide;
mod explain;
mod look_ahead;
mod pricing;
mod propose;
pub mod sparse;
mod table_assignment;

pub use propose::propose;
