//! Painting as JSON: the season's painting rules, claims, and units brought from an earlier season.

pub mod brought;
pub mod claim;
pub mod rules;
