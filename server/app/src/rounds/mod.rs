//! Pairing rounds: proposed with proof and reasons, published once, never drawn again; repaired where
//! something befalls a published one.

mod find_fairness;
mod games;
mod households;
mod list_rounds;
mod neutral;
mod propose_round;
mod publish_repair;
mod publish_round;
mod repair_round;
pub(crate) mod seats;
mod shock;
mod taken;
mod task;
mod timing;

pub use find_fairness::{SeasonFairness, find_fairness};
pub use list_rounds::list_rounds;
pub use propose_round::{ProposeRound, propose_round};
pub use publish_round::publish_round;
pub use repair_round::{Repair, RepairRound, repair_round, with_changes};
pub use store::rounds::Round;
pub(crate) use timing::Timed;
pub use timing::{Step, Stopwatch};
