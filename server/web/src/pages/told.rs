//! A refusal told beside the form that caused it.

use actix_web::http::StatusCode;
use app::{Fault, Refusal};

use crate::problem::Problem;

/// What a form is told; nothing at first.
#[derive(Debug, Default)]
pub struct Told {
    /// One sentence about the whole.
    detail: Option<String>,
    /// Every fault with its place.
    faults: Vec<Fault>,
    status: StatusCode,
}

impl Told {
    /// A rule's refusal is told beside the form.
    ///
    /// # Errors
    /// Any other refusal becomes a page of its own.
    pub fn or_problem(refusal: Refusal) -> Result<Self, Problem> {
        let (detail, faults) = match &refusal {
            Refusal::Rule { detail, faults, .. } => (detail.clone(), faults.clone()),
            _ => return Err(refusal.into()),
        };
        Ok(Self {
            detail: Some(detail),
            faults,
            status: Problem::from(refusal).status(),
        })
    }

    /// Faults that the form itself found.
    pub fn faults(detail: impl Into<String>, faults: Vec<Fault>) -> Self {
        Self {
            detail: Some(detail.into()),
            faults,
            status: StatusCode::UNPROCESSABLE_ENTITY,
        }
    }

    /// Whether there is nothing to tell.
    pub fn is_empty(&self) -> bool {
        self.detail.is_none()
    }

    /// The status of the form's page.
    pub fn status(&self) -> StatusCode {
        self.status
    }

    /// What reading a document said.
    pub fn of(problem: &Problem) -> Self {
        Self {
            detail: Some(problem.sentence().to_owned()),
            faults: problem.faults().to_vec(),
            status: problem.status(),
        }
    }

    /// Every sentence.
    pub fn sentences(&self) -> Vec<&str> {
        let faults = self.faults.iter().map(|fault| fault.detail.as_str());
        let mut sentences: Vec<&str> = faults.collect();
        if sentences.is_empty() {
            sentences.extend(self.detail.as_deref());
        }
        sentences
    }
}
