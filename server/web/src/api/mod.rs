//! The operations for programs, one file per subject: bodies in, views out, handlers between.

pub mod accounts;
pub mod catalogues;
pub mod clubs;
pub mod exports;
pub mod fairness;
pub mod games;
pub mod invitations;
pub mod list_aids;
pub mod lists;
pub mod members;
pub mod next_season;
pub mod outlooks;
pub mod painting;
pub mod photos;
pub mod players;
pub mod previews;
pub mod record_consents;
pub mod round_words;
pub mod rounds;
pub mod scenarios;
pub mod seasons;
pub mod sessions;
pub mod standings;
pub mod statistics;
pub mod trail;
pub mod weeks;
