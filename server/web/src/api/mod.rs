//! The operations for programs, one file per subject: bodies in, views out, handlers between.

pub mod accounts;
pub mod catalogues;
pub mod clubs;
pub mod invitations;
pub mod lists;
pub mod members;
pub mod players;
pub mod scenarios;
pub mod seasons;
pub mod sessions;
pub mod trail;
pub mod weeks;
