//! Army lists: what a list is, the exact check against its week, and what follows from it.

pub mod amount;
pub mod army_list;
pub mod carry_over;
pub mod changes;
pub mod check;
pub mod collection;
pub mod continued;
pub mod cuts;
pub mod facts;
pub mod finding;
pub mod fits;
pub mod kinds;
#[cfg(test)]
mod properties;
pub mod reader;
pub mod rules;
#[cfg(test)]
pub(crate) mod samples;
pub mod satisfiable;
mod sound;
mod trial;
pub mod weeks;

pub use army_list::{ArmyList, Entry, EntryKey};
pub use changes::{Became, Change, changes};
pub use check::{Previous, Report, Terms, check};
pub use collection::{CollectionUnit, brought_list, collection};
pub use continued::continued;
pub use cuts::{Cut, CutStep, cuts};
pub use finding::{Finding, Measure, Measured, Severity};
pub use fits::{Addition, Fits, Step, Upgrade, fits};
