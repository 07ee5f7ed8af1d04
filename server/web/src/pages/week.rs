//! Pages of a week, its scenario among them.

pub mod cards;
pub mod overview;
pub mod panel;
pub mod print;
pub mod scenario_editor;
pub mod scenario_form;
