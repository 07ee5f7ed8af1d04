//! The texts of pages, and the translations of refusals that are still found by their English.

mod german_speech;
pub mod speech;

pub use messages::Texts;
