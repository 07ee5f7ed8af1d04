//! The operations for programs, one file per subject: bodies in, views out, handlers between.

pub mod accounts;
pub mod clubs;
pub mod invitations;
pub mod members;
pub mod sessions;
