//! What the stories stand on: a real server over a real database, people with names who talk to it
//! over HTTP, and a clock that moves when the story says so.

mod actor;
mod answer;
mod clock;
mod cluster;
mod database;
mod server;

pub use cluster::RUNTIME;
pub use database::Database;
pub use server::Server;
