//! Pairing rounds: proposed with proof and reasons, published once, never drawn again.

mod list_rounds;
mod propose_round;
mod publish_round;
mod task;

pub use list_rounds::list_rounds;
pub use propose_round::{ProposeRound, propose_round};
pub use publish_round::publish_round;
pub use store::rounds::Round;
