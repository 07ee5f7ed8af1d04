//! A refusal told beside the form that caused it.

use actix_web::http::StatusCode;
use app::{Fault, Reason, Refusal};

use super::texts::Texts;
use crate::problem::Problem;

/// What a form is told; nothing at first.
#[derive(Debug, Default)]
pub struct Told {
    /// The stable code.
    code: &'static str,
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
        let (code, detail, faults) = match &refusal {
            Refusal::Rule {
                reason,
                detail,
                faults,
                ..
            } => (reason.code(), detail.clone(), faults.clone()),
            _ => return Err(refusal.into()),
        };
        Ok(Self {
            code,
            detail: Some(detail),
            faults,
            status: Problem::from(refusal).status(),
        })
    }

    /// Faults that the form itself found.
    pub fn faults(detail: impl Into<String>, faults: Vec<Fault>) -> Self {
        Self {
            code: Reason::Validation.code(),
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
            code: problem.code(),
            detail: Some(problem.sentence().to_owned()),
            faults: problem.faults().to_vec(),
            status: problem.status(),
        }
    }

    /// What it says in short in the reader's language.
    pub fn heading(&self, t: &Texts) -> String {
        match t.speech().refusal(self.code) {
            Some(words) => words.to_owned(),
            None => t.form_faults.to_string(),
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
