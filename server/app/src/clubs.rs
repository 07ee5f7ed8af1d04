//! Clubs, their members and invitations.

mod accept_invitation;
mod create_club;
mod create_invitation;
mod create_record_consent;
mod delete_invitation;
mod delete_member;
mod delete_record_consent;
mod find_club;
mod find_record_consent;
mod list_invitations;
mod list_members;
mod list_record_places;
mod update_member;

pub use accept_invitation::accept_invitation;
pub use create_club::{CreateClub, create_club};
pub use create_invitation::{
    CreateInvitation, CreatedInvitation, MAX_DAYS, MAX_USES, create_invitation,
};
pub use create_record_consent::create_record_consent;
pub use delete_invitation::delete_invitation;
pub use delete_member::delete_member;
pub use delete_record_consent::delete_record_consent;
pub use find_club::find_club;
pub use find_record_consent::{RecordConsent, find_record_consent};
pub use list_invitations::list_invitations;
pub use list_members::list_members;
pub use list_record_places::list_record_places;
pub use store::clubs::{Club, Member};
pub use store::invitations::Invitation;
pub use update_member::update_member;
