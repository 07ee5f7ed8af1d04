//! Faults of a document that came in, each with its JSON pointer.

use messages::Message;

/// What is wrong at one place of a document. A refusal carries all of them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DocumentFault {
    /// JSON Pointer (RFC 6901) to the member, such as `/entries/0/unit`.
    pub pointer: String,
    /// Stable code of the fault.
    pub code: String,
    pub message: Message,
    /// What would have been allowed, where that is a number.
    pub limit: Option<i64>,
    /// What was given.
    pub actual: Option<i64>,
}

impl DocumentFault {
    /// A fault of `code` at `pointer`.
    pub fn new(pointer: impl Into<String>, code: impl Into<String>, message: Message) -> Self {
        Self {
            pointer: pointer.into(),
            code: code.into(),
            message,
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
pub(crate) fn ok_or_note<T>(
    faults: &mut Vec<DocumentFault>,
    pointer: impl Into<String>,
    code: &str,
    result: Result<T, Message>,
) -> Option<T> {
    result
        .map_err(|message| faults.push(DocumentFault::new(pointer, code, message)))
        .ok()
}
