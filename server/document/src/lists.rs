//! Army lists as JSON: what is handed in, the list rules, and what the server says about a list.

pub mod army_list;
pub mod changes;
pub mod collection;
pub mod cuts;
pub mod fits;
pub mod reading;
pub mod receipt;
pub mod report;
pub mod rules;
pub mod unsatisfiable;
