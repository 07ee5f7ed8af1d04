//! The promises of the pairing, read from outside: laws, best choice, hall, future, proof.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

mod brute;
mod forged;
mod hall;
mod laws;
mod look_ahead;
mod oracle;
mod repair;
mod season;
