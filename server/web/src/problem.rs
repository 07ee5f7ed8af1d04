//! Problems (RFC 9457 `application/problem+json`): every refusal as a response.

mod document;
mod explain;
mod kind;
mod render;

use std::ops::RangeInclusive;

use actix_web::http::StatusCode;
use actix_web::http::header::HeaderValue;
use app::{Fault, Reason, Refusal};
use messages::{Message, requests};
use serde_json::{Map, Value};

pub use document::{FaultDocument, ProblemDocument, ProblemResponses};
pub use explain::{explain_problem, list_problems};
pub use kind::{HttpFault, ProblemKind};
pub use render::render;

/// A refusal with its HTTP status.
#[derive(Debug)]
pub struct Problem {
    kind: ProblemKind,
    detail: Option<Message>,
    /// Extension members of the document.
    extensions: Map<String, Value>,
    faults: Vec<Fault>,
    retry_after: Option<u64>,
    /// The value of `Allow`.
    allow: Option<HeaderValue>,
    /// For the log alone.
    cause: Option<String>,
}

impl Problem {
    /// A problem of HTTP, which no rule of the league knows.
    pub fn http(fault: HttpFault) -> Self {
        Self::new(ProblemKind::http(fault))
    }

    /// 422 with its faults.
    pub fn unprocessable(code: &'static str, faults: Vec<Fault>) -> Self {
        let kind = if code == "unknown-field" {
            ProblemKind::http(HttpFault::UnknownField)
        } else {
            ProblemKind::rule(Reason::Validation)
        };
        Self {
            faults,
            ..Self::new(kind)
        }
    }

    /// 413, with the limit.
    pub fn too_large(limit: usize) -> Self {
        let mut problem =
            Self::http(HttpFault::PayloadTooLarge).detail(requests::body_too_large(limit));
        problem.extensions.insert("limit".to_owned(), limit.into());
        problem
    }

    /// 400 for a number in the address that is out of its range.
    pub fn out_of_range(parameter: &str, range: RangeInclusive<u32>, actual: u32) -> Self {
        let (min, max) = range.into_inner();
        let detail = requests::parameter_range(parameter, min, max, actual);
        let mut problem = Self::parameter(parameter).actual(actual).detail(detail);
        let limit = actual.clamp(min, max);
        problem.extensions.insert("limit".to_owned(), limit.into());
        problem
    }

    /// 400 for a parameter of the query.
    pub fn parameter(name: &str) -> Self {
        let mut problem = Self::http(HttpFault::InvalidParameter);
        problem
            .extensions
            .insert("parameter".to_owned(), name.into());
        problem
    }

    /// With what was given.
    #[must_use]
    pub fn actual(mut self, actual: impl Into<Value>) -> Self {
        self.extensions.insert("actual".to_owned(), actual.into());
        self
    }

    /// 405, with the methods that the address takes.
    pub fn not_allowed(allow: &'static str) -> Self {
        Self {
            allow: Some(HeaderValue::from_static(allow)),
            ..Self::http(HttpFault::MethodNotAllowed)
        }
    }

    /// With a message about this very case.
    #[must_use]
    pub fn detail(mut self, detail: Message) -> Self {
        self.detail = Some(detail);
        self
    }

    /// With the seconds after which to try again.
    #[must_use]
    pub fn retry_after(mut self, seconds: u64) -> Self {
        self.retry_after = Some(seconds);
        self
    }

    /// The status it is sent with.
    pub fn status(&self) -> StatusCode {
        self.kind.status
    }

    /// The path of the page that explains its kind.
    pub fn page(&self) -> String {
        format!("/problems/{}", self.kind.code)
    }

    /// Its stable code.
    pub fn code(&self) -> &'static str {
        self.kind.code
    }

    /// The detail of this case, else the title of its kind.
    pub fn detail_or_title(&self) -> Message {
        self.detail.clone().unwrap_or_else(self.kind.title)
    }

    /// The single faults, where there are several or they have a place.
    pub fn faults(&self) -> &[Fault] {
        &self.faults
    }

    fn new(kind: ProblemKind) -> Self {
        Self {
            kind,
            detail: None,
            extensions: Map::new(),
            faults: Vec::new(),
            retry_after: None,
            allow: None,
            cause: None,
        }
    }
}

impl From<Refusal> for Problem {
    fn from(refusal: Refusal) -> Self {
        match refusal {
            Refusal::SignInNeeded => Self::http(HttpFault::Unauthenticated),
            Refusal::NotFound => Self::http(HttpFault::NotFound),
            Refusal::Rule {
                reason,
                message,
                facts,
                faults,
            } => {
                let retry_after = facts.get("retry_after").and_then(Value::as_u64);
                Self {
                    detail: Some(message),
                    extensions: facts,
                    faults,
                    retry_after,
                    ..Self::new(ProblemKind::rule(reason))
                }
            }
            Refusal::Unavailable { retry_after, cause } => Self {
                retry_after: Some(retry_after),
                cause: Some(cause.to_string()),
                ..Self::http(HttpFault::Unavailable)
            },
            Refusal::Internal(cause) => Self {
                cause: Some(cause),
                ..Self::http(HttpFault::Internal)
            },
        }
    }
}

impl std::fmt::Display for Problem {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.kind.code)
    }
}
