//! HTTP for people and programs: the API (`api`), the pages (`pages`), and what every request passes.

mod allowed_methods;
mod api;
mod app_factory;
mod archive;
mod authentication;
mod body;
mod canonical_number;
mod capitalized;
mod change_limit;
mod health;
mod if_match;
mod metrics;
mod openapi;
mod pages;
mod parse;
mod paths;
mod problem;
mod public_url;
mod query_parameters;
mod request_span;
mod response;
mod routes;
mod season_version;
mod security_headers;

pub use app_factory::build_app;
pub use change_limit::ChangeLimit;
pub use health::Draining;
pub use metrics::{Metrics, list_metrics};
pub use openapi::document::OpenApiDocument;
pub use public_url::PublicUrl;
pub use routes::{configure, openapi};
