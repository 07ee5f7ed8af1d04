//! What the binary `tallyhost` is made of: configuration, the embedded database, and its commands.

pub mod postgres;
