//! From the night to the table: slips, absences, rulings, and the lines behind every point.

mod absence;
mod outlooks;
mod photos;
mod rulings;
mod slips;
pub mod week;
