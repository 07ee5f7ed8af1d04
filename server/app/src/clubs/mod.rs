//! Clubs, their people and how people get in.

mod accept_invitation;
mod create_club;
mod create_invitation;
mod delete_member;
mod find_club;
mod list_members;
mod update_member;

pub use accept_invitation::accept_invitation;
pub use create_club::{CreateClub, create_club};
pub use create_invitation::{CreateInvitation, CreatedInvitation, create_invitation};
pub use delete_member::delete_member;
pub use find_club::find_club;
pub use list_members::list_members;
pub use store::clubs::{Club, Member};
pub use update_member::update_member;
