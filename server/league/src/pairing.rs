//! Who meets whom this round: the best pairing under the season's wishes, with a proof.
//!
//! One way through: [`Task`] (the locked inputs) → [`cost`] (contenders in seeded order, wishes as one
//! integer per pair) → [`search`] with [`solve`] (minimum-cost perfect matching) → [`Proposal`] with
//! its certificate and reasons. Anyone can check the result with [`verify`], which shares nothing
//! with the search and the solver.

pub mod cost;
pub mod history;
mod proof;
pub mod robin;
pub mod round;
pub mod search;
pub mod solve;

pub use proof::{VerifyError, verify};
pub use round::certificate::Certificate;
pub use round::cost::{Cost, Level};
pub use round::draw::Draw;
pub use round::game::{FixedGame, Game, Meeting, Pair};
pub use round::hall::{Night, NightKey, NightSet, TableNo};
pub use round::proposal::{LookAhead, Proposal, ProposeError, TaskFault};
pub use round::reason::{AlternativeCost, Barrier, PairingReason, Subject};
pub use round::task::{Contender, Float, Household, RoleHistory, Task};
pub use round::wishes::{Wish, WishFault, Wishes};
pub use search::propose;

#[cfg(test)]
mod tests {
    mod matching;
    mod sparse;
}
