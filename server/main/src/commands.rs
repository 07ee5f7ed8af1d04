//! One file for each command.

mod backup;
mod demo;
mod migrate;
mod openapi;
mod restore;
mod serve;
mod verify;

pub use backup::backup;
pub use demo::demo;
pub use migrate::migrate;
pub use openapi::openapi;
pub use restore::restore;
pub use serve::serve;
pub use verify::verify;
