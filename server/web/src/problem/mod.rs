//! Every refusal on the wire: RFC 9457 `application/problem+json`, from one match.

mod document;
mod explain;
mod kinds;
mod render;

use std::ops::RangeInclusive;

use actix_web::http::StatusCode;
use actix_web::http::header::HeaderValue;
use app::{Fault, Reason, Refusal};
use serde_json::{Map, Value};

pub use document::{FaultDocument, ProblemDocument, Problems};
pub use explain::{explain_problem, list_problems};
pub use kinds::{Kind, WireFault};
pub use render::render;

/// A refusal with its status.
#[derive(Debug)]
pub struct Problem {
    kind: Kind,
    detail: Option<String>,
    facts: Map<String, Value>,
    faults: Vec<Fault>,
    retry_after: Option<u64>,
    /// Methods that the address takes.
    allow: Option<HeaderValue>,
    /// For the log alone.
    cause: Option<String>,
}

impl Problem {
    /// A problem of the request as such, before any rule is asked.
    pub fn wire(fault: WireFault) -> Self {
        Self::of(Kind::wire(fault))
    }

    /// 422 with its faults.
    pub fn unprocessable(code: &'static str, faults: Vec<Fault>) -> Self {
        let kind = if code == "unknown-field" {
            Kind::wire(WireFault::UnknownField)
        } else {
            Kind::rule(Reason::Validation)
        };
        Self {
            faults,
            ..Self::of(kind)
        }
    }

    /// 413, with the limit.
    pub fn too_large(limit: usize) -> Self {
        let mut problem = Self::wire(WireFault::PayloadTooLarge)
            .detail(format!("The body may have at most {limit} bytes."));
        problem.facts.insert("limit".to_owned(), limit.into());
        problem
    }

    /// 400 for a number in the address that is out of its range.
    pub fn out_of_range(parameter: &str, range: RangeInclusive<u32>, actual: u32) -> Self {
        let (least, most) = range.into_inner();
        let detail = format!("{parameter} is from {least} to {most}, not {actual}.");
        let mut problem = Self::parameter(parameter).actual(actual).detail(detail);
        let limit = actual.clamp(least, most);
        problem.facts.insert("limit".to_owned(), limit.into());
        problem
    }

    /// 400 for a parameter of the query.
    pub fn parameter(name: &str) -> Self {
        let mut problem = Self::wire(WireFault::InvalidParameter);
        problem.facts.insert("parameter".to_owned(), name.into());
        problem
    }

    /// With what was given.
    #[must_use]
    pub fn actual(mut self, actual: impl Into<Value>) -> Self {
        self.facts.insert("actual".to_owned(), actual.into());
        self
    }

    /// 405, with the methods that the address takes.
    pub fn not_allowed(allow: &'static str) -> Self {
        Self {
            allow: Some(HeaderValue::from_static(allow)),
            ..Self::wire(WireFault::MethodNotAllowed)
        }
    }

    /// With a sentence about this very case.
    #[must_use]
    pub fn detail(mut self, detail: impl Into<String>) -> Self {
        self.detail = Some(detail.into());
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

    /// Its stable code.
    pub fn code(&self) -> &'static str {
        self.kind.code
    }

    /// About this very case, or what every problem of the kind is called.
    pub fn sentence(&self) -> &str {
        self.detail.as_deref().unwrap_or(self.kind.title)
    }

    /// Every single fault, where there are several.
    pub fn faults(&self) -> &[Fault] {
        &self.faults
    }

    fn of(kind: Kind) -> Self {
        Self {
            kind,
            detail: None,
            facts: Map::new(),
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
            Refusal::SignInNeeded => Self::wire(WireFault::Unauthenticated),
            Refusal::NotFound => Self::wire(WireFault::NotFound),
            Refusal::Rule {
                reason,
                detail,
                facts,
                faults,
            } => {
                let retry_after = facts.get("retry_after").and_then(Value::as_u64);
                Self {
                    detail: Some(detail),
                    facts,
                    faults,
                    retry_after,
                    ..Self::of(Kind::rule(reason))
                }
            }
            Refusal::Unavailable { retry_after, cause } => Self {
                retry_after: Some(retry_after),
                cause: Some(cause),
                ..Self::wire(WireFault::Unavailable)
            },
            Refusal::Broken(cause) => Self {
                cause: Some(cause),
                ..Self::wire(WireFault::Internal)
            },
        }
    }
}

impl std::fmt::Display for Problem {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.kind.code)
    }
}
