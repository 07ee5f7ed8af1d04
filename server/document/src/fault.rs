//! Faults of a document that came in, each with its JSON pointer.

use std::fmt::Display;

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// What is wrong at one place of a document. A refusal carries all of them.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct DocumentFault {
    /// JSON Pointer (RFC 6901) to the member, such as `/entries/0/unit`.
    #[schema(example = "/entries/0/unit")]
    pub pointer: String,
    /// Stable code of the fault.
    #[schema(example = "list.key")]
    pub code: String,
    /// The fault in plain English.
    pub detail: String,
    /// What would have been allowed, where that is a number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limit: Option<i64>,
    /// What was given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub actual: Option<i64>,
}

impl DocumentFault {
    /// A fault of `code` at `pointer`.
    pub fn new(pointer: impl Into<String>, code: impl Into<String>, detail: impl Display) -> Self {
        Self {
            pointer: pointer.into(),
            code: code.into(),
            detail: detail.to_string(),
            limit: None,
            actual: None,
        }
    }

    /// Adds what would have been allowed and what was given.
    #[must_use]
    pub fn with_limit(mut self, limit: impl Into<i64>, actual: impl Into<i64>) -> Self {
        self.limit = Some(limit.into());
        self.actual = Some(actual.into());
        self
    }

    /// Adds both, where the fault is one of size.
    #[must_use]
    pub fn with_limit_if_any(self, found: Option<(i64, i64)>) -> Self {
        match found {
            Some((limit, actual)) => self.with_limit(limit, actual),
            None => self,
        }
    }
}

/// Takes the value or notes why there is none.
pub(crate) fn ok_or_note<T, E: Display>(
    faults: &mut Vec<DocumentFault>,
    pointer: impl Into<String>,
    code: &str,
    result: Result<T, E>,
) -> Option<T> {
    result
        .map_err(|fault| faults.push(DocumentFault::new(pointer, code, fault)))
        .ok()
}
