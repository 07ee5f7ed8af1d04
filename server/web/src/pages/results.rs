//! Pages about games and their results.

pub mod game;
pub mod points;
pub mod results_desk;
pub mod slip_form;
