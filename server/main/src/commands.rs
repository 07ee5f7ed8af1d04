//! One file for each command.

mod demo;
mod migrate;
mod openapi;
mod serve;
mod verify;

pub use demo::demo;
pub use migrate::migrate;
pub use openapi::openapi;
pub use serve::serve;
pub use verify::verify;
