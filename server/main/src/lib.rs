//! What the binary `tallyhost` is made of: configuration, the embedded database, and its commands.

mod backup;
pub mod cli;
mod commands;
mod database;
pub mod demo;
mod due_tasks;
mod metrics;
mod os_limits;
pub mod postgres;
mod replication;
mod scheduling;
mod server;
pub mod settings;
mod shutdown;
pub mod telemetry;
