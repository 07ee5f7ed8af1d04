//! The independent check that a proposal is allowed and the best there is.

mod checker;
mod dead_end;
mod verify;

pub use verify::{VerifyError, verify};
