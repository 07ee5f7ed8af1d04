//! The painting log: claimed by the player, looked at by somebody else, at the table or by photo.

mod claim_painting;
mod create_photo;
mod decide_claim;
mod delete_photo;
mod find_photo;
mod list_claims;
mod list_photos;
mod picture;

pub use claim_painting::{ClaimPainting, claim_painting};
pub use create_photo::create_photo;
pub use decide_claim::{refuse_claim, verify_claim};
pub use delete_photo::delete_photo;
pub use find_photo::find_photo;
pub use league::painting::PaintingClaim;
pub use list_claims::list_claims;
pub use list_photos::list_photos;
pub use picture::is_picture;
