//! Pairing rounds as JSON: the task, the proposal with its proof, repairs and the fairness audit.

pub mod certificate;
pub mod fairness;
pub mod method;
pub mod proposal;
pub mod repair;
pub mod seats;
pub mod task;
