//! Army lists: what a list is, the exact check against its week, and what follows from it.

pub mod amount;
pub mod army_list;
pub mod carry_over;
mod catalogue_rules;
pub mod changes;
pub mod check;
pub mod collection;
pub mod cuts;
pub mod entry_keys;
pub mod finding;
pub mod fits;
pub mod kind_filter;
pub mod line;
pub mod list_facts;
#[cfg(test)]
mod property_tests;
pub mod reader;
pub mod rules;
#[cfg(test)]
pub(crate) mod samples;
pub mod satisfiable;
pub mod terms;
mod trial;
pub mod week_set;

pub use army_list::{ArmyList, Entry, EntryKey, PaintedModels};
pub use carry_over::PreviousList;
pub use changes::{ListChange, ListChangeKind, compare_lists};
pub use check::{CheckReport, check};
pub use collection::{CollectionUnit, brought_list, build_collection};
pub use cuts::{Cut, CutStep, find_cuts};
pub use entry_keys::reuse_entry_keys;
pub use finding::{Finding, Measure, Measured, Severity};
pub use fits::{Addition, Fits, Upgrade, UpgradeStep, find_fits};
pub use terms::ListTerms;
