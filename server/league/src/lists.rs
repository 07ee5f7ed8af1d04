//! Army lists: what a list is, the exact check against its week, and what follows from it.

pub mod amount;
pub mod army_list;
pub mod carry_over;
pub mod check;
pub mod facts;
pub mod finding;
pub mod kinds;
pub mod painted;
pub mod rules;
mod sound;
pub mod weeks;

pub use army_list::{ArmyList, Entry, EntryKey};
pub use check::{Previous, Report, Terms, check};
pub use finding::{Finding, Measure, Measured, Severity};
