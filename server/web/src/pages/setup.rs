//! Pages that set a season up.

pub mod form;
pub mod next_season;
pub mod steps;
pub mod wizard;
