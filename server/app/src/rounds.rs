//! Pairing rounds: proposed with proof and reasons, published once, never drawn again; repaired where
//! something happens to a published one.

mod build_games;
mod build_task;
mod disruption;
mod fairness_cache;
mod find_fairness;
pub(crate) mod households;
mod internal_error;
mod list_rounds;
mod neutrality;
mod occupied_tables;
mod pairing_timer;
mod propose_round;
mod publish_repair;
mod publish_round;
mod repair_round;
pub(crate) mod seats;

pub(crate) use fairness_cache::FairnessCache;
pub use fairness_cache::SeasonFairness;
pub use find_fairness::find_fairness;
pub use list_rounds::list_rounds;
pub(crate) use pairing_timer::PairingTimer;
pub use pairing_timer::{PairingStep, Stopwatch};
pub use propose_round::{ProposeRound, propose_round};
pub use publish_round::publish_round;
pub use repair_round::{RepairRound, RoundRepair, repair_round, with_changes};
pub use store::rounds::RoundRow;
