//! standings
