//! Pages of a club, its people and their accounts.

pub mod accounts;
pub mod catalogues;
pub mod home;
pub mod invitations;
pub mod overview;
pub mod record_consent;
