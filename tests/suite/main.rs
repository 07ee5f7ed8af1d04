//! Tests from outside: the real binary over HTTP, the real PostgreSQL beneath it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test that cannot go on fails"
)]

mod backup;
mod browser;
mod clubs_apart;
mod crash;
mod demo;
mod embedded_database;
mod encrypted_database;
mod faults;
mod forms;
mod harness;
mod house;
mod imports;
mod migrations;
mod openapi;
mod operation;
mod process;
mod service;
mod side_by_side;
mod sources;
mod stories;
mod texts_in_code;
