//! The handlers of the read service, by what they read.

pub mod directory;
pub mod events;
pub mod past;
pub mod preflight;
pub mod record;
pub mod season;
