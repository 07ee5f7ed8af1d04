//! The shared read service: what everybody may see of public seasons, from a cache that is never
//! wrong. Needs no account, no secret, and nothing of the database but reading.
//!
//! A body belongs to one version of its season and is encoded once for it. Whoever asks after a
//! writer of **this process** was answered sees what was written. Changes by **other processes** are
//! told by a notice of the database within moments; should a notice be lost, within half a second;
//! and a body is never served whose version was confirmed more than two seconds ago, nor by a replica
//! that has been cut off from its primary for longer than the process was told to serve. A body ends
//! with the instant at which the clock alone would show more.

mod addresses;
mod answer;
mod asked;
mod counts;
mod directory;
mod encoding;
mod events;
mod format;
mod front;
mod frozen;
mod kept;
mod league_clock;
mod once;
mod openapi;
mod page;
mod preflight;
mod reads;
mod record;
mod resource;
mod routes;
mod seen;
mod sheets;
mod shelf;
mod turn;
mod turned;
mod watch;

pub use counts::Counts;
pub use front::{Front, Tell, Told};
pub use openapi::openapi;
pub use routes::configure;
pub use shelf::Shelf;
pub use watch::keep_current;
