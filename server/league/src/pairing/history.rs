//! Earlier rounds: what they say of a contender, and whether they were fair to everyone.

pub mod audit;
mod audit_messages;
pub mod past;
pub mod scores;
