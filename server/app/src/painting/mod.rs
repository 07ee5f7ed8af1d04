//! The painting log: claimed by the player, looked at by somebody else.

mod claim_painting;
mod decide_claim;
mod list_claims;

pub use claim_painting::{ClaimPainting, claim_painting};
pub use decide_claim::{refuse_claim, verify_claim};
pub use league::painting::Claim;
pub use list_claims::list_claims;
