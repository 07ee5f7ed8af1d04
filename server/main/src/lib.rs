//! What the binary `tallyhost` is made of: configuration, the embedded database, and its commands.

mod calendar;
pub mod cli;
mod commands;
mod connections;
mod database;
pub mod demo;
mod metrics;
pub mod postgres;
mod replication;
mod server;
pub mod settings;
mod stop;
pub mod telemetry;
mod turns;
