//! From the night to the table: slips, absences, rulings, and the lines behind every point.

mod absence;
mod outlooks;
mod rulings;
mod slips;
mod week;
