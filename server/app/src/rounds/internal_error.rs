//! The refusal for locked inputs or proposals that can no longer be read.

use crate::Refusal;

pub(super) fn internal_error(cause: &impl std::fmt::Debug) -> Refusal {
    Refusal::Internal(format!("pairing: {cause:?}"))
}
