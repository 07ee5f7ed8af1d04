//! The operations for programs, one file per subject: bodies in, views out, handlers between.

pub mod accounts;
pub mod catalogues;
pub mod clubs;
pub mod exports;
pub mod games;
pub mod invitations;
pub mod lists;
pub mod members;
pub mod painting;
pub mod players;
pub mod rounds;
pub mod scenarios;
pub mod seasons;
pub mod sessions;
pub mod standings;
pub mod trail;
pub mod weeks;
