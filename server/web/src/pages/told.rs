//! A refusal told beside the form that caused it.

use actix_web::http::StatusCode;
use app::{Fault, Reason, Refusal};

use super::answer::{PageAnswer, go};
use super::texts::Texts;
use super::texts::speech::Said;
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

    /// Without the findings of a list, which its page shows in any case.
    #[must_use]
    pub fn beside_the_check(mut self) -> Self {
        let of_list = |fault: &Fault| fault.code.starts_with("list.");
        if !self.faults.is_empty() && self.faults.iter().all(of_list) {
            self.faults.clear();
            self.detail = self.detail.map(|_| String::new());
        }
        self
    }

    /// What stands above the sentences: what it is about in short, where they are foreign or none.
    pub fn heading(&self, t: &Texts) -> String {
        if self.detail.as_ref().is_some_and(String::is_empty) {
            return t.not_handed_in.to_string();
        }
        let sentences = self.sentences(t);
        let short = t.speech().refusal(self.code);
        match short.filter(|_| sentences.iter().all(|said| said.foreign)) {
            Some(words) => words.to_owned(),
            None => t.form_faults.to_string(),
        }
    }

    /// Every sentence.
    pub fn sentences(&self, t: &Texts) -> Vec<Said> {
        let faults = self.faults.iter().map(|fault| fault.detail.as_str());
        let mut sentences: Vec<&str> = faults.collect();
        if sentences.is_empty() {
            sentences.extend(self.detail.as_deref().filter(|detail| !detail.is_empty()));
        }
        let said = |sentence| Said::detail(t.speech(), sentence);
        sentences.into_iter().map(said).collect()
    }
}

/// On to the next page when it is done, else back to the form with what was refused.
///
/// # Errors
/// What is no matter of the form becomes a page of its own.
pub async fn go_or_tell<T>(
    done: Result<T, Refusal>,
    next: impl FnOnce(T) -> String,
    form: impl AsyncFnOnce(Told) -> PageAnswer,
) -> PageAnswer {
    match done {
        Ok(done) => Ok(go(&next(done))),
        Err(refusal) => form(Told::or_problem(refusal)?).await,
    }
}
