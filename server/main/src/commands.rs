//! One file for each command.

mod migrate;
mod openapi;
mod serve;

pub use migrate::migrate;
pub use openapi::openapi;
pub use serve::serve;
