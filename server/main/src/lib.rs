//! What the binary `tallyhost` is made of: configuration, the embedded database, and its commands.

pub mod postgres;
pub mod settings;
pub mod telemetry;
