//! HTTP for people and programs. The only crate that knows requests, statuses and pages.

mod answer;
mod api;
mod body;
mod door;
mod headers;
mod problem;
mod routes;
mod who;

pub use door::server_parts;
pub use routes::openapi;
