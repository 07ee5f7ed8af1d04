//! Who meets whom this round: the best pairing under the season's wishes, with a proof.
//!
//! One way through: [`Task`] (the locked inputs) → [`field`] (contenders in seeded order) →
//! [`cost`] (wishes as one integer per pair) → `solve` (minimum-cost perfect matching) →
//! [`Proposal`] with its certificate and reasons. Anyone can check the result with
//! `certificate::verify`, which shares nothing with the solver.

pub mod audit;
mod audit_sentences;
mod branch;
mod candidates;
pub mod certificate;
pub mod changes;
mod checker;
pub mod cost;
mod decide;
pub mod draw;
pub mod field;
mod futures;
pub mod hall;
mod look_ahead;
pub mod past;
mod pricing;
pub mod proposal;
mod propose;
mod quick;
pub mod reason;
pub mod repair;
pub mod round_robin;
pub mod rounds;
mod sentences;
pub mod solve;
pub mod sparse;
#[cfg(test)]
mod sparse_tests;
pub mod table_round;
mod tables;
pub mod task;
mod verify;
pub mod wishes;

pub use certificate::Certificate;
pub use draw::Draw;
pub use hall::{Night, NightKey, Nights, TableNo};
pub use proposal::{Cost, Fault, Game, Impossible, Level, LookedAhead, Proposal};
pub use propose::propose;
pub use reason::{Barrier, Price, Reason, Subject};
pub use task::{Contender, Fixture, Float, Household, Meeting, Pair, Roles, Task};
pub use wishes::{Wish, WishFault, Wishes};
