//! HTTP for people and programs. The only crate that knows requests, statuses and pages.

mod answer;
mod api;
mod archive;
mod body;
mod document;
mod door;
mod headers;
mod health;
mod limits;
mod methods;
mod metrics;
mod openapi;
mod pages;
mod parse;
mod plain_number;
mod precondition;
mod problem;
mod public_address;
mod query;
mod routes;
mod season_version;
mod span;
mod who;

pub use document::Document;
pub use door::server_parts;
pub use health::Leaving;
pub use limits::Limits;
pub use metrics::Metrics;
pub use public_address::PublicAddress;
pub use routes::{desk, openapi};
