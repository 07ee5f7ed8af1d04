//! The rules of an escalation league as plain functions: facts and an instant in, a decision out.
//!
//! Absent by design: input and output, a clock, randomness, `async`, serialisation. Time and seeds
//! arrive as arguments, so every rule can be tested with nothing else running.

pub mod catalogue;
pub mod club_role;
pub mod ids;
pub mod keys;
pub mod ledger;
pub mod lists;
pub mod name;
pub mod painting;
pub mod pairing;
pub mod points;
pub mod result;
pub mod scenario;
pub mod scoring;
pub mod season;
pub mod share;
pub mod side;
pub mod standings;
pub mod time;
pub mod week;
