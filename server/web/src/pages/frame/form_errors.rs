//! The errors that are shown beside the form that caused them.

use actix_web::http::StatusCode;
use app::{Fault, Reason, Refusal};

use super::response::{PageResult, see_other};
use crate::pages::texts::speech::{Said, short_refusal};
use crate::pages::texts::Texts;
use crate::problem::Problem;

/// The errors of a form; none at first.
#[derive(Debug, Default)]
pub struct FormErrors {
    /// The stable code of the refusal.
    code: &'static str,
    /// One sentence about the whole.
    detail: Option<String>,
    /// Every fault with its place.
    faults: Vec<Fault>,
    status: StatusCode,
}

impl FormErrors {
    /// The refusal of a rule is shown beside the form.
    ///
    /// # Errors
    /// Any other refusal becomes an error page.
    pub fn from_refusal(refusal: Refusal) -> Result<Self, Problem> {
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

    /// Faults that were found before any use case was asked.
    pub fn new(detail: impl Into<String>, faults: Vec<Fault>) -> Self {
        Self {
            code: Reason::Validation.code(),
            detail: Some(detail.into()),
            faults,
            status: StatusCode::UNPROCESSABLE_ENTITY,
        }
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.detail.is_none()
    }

    /// The status to show the form with.
    pub fn status(&self) -> StatusCode {
        self.status
    }

    /// The errors of a JSON document that somebody pasted.
    pub fn from_problem(problem: &Problem) -> Self {
        Self {
            code: problem.code(),
            detail: Some(problem.detail_or_title().to_owned()),
            faults: problem.faults().to_vec(),
            status: problem.status(),
        }
    }

    /// Without the findings of a list, which its page shows in any case.
    #[must_use]
    pub fn without_list_findings(mut self) -> Self {
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
            return t.not_handed_in().into_owned();
        }
        let sentences = self.sentences(t);
        let short = short_refusal(*t, self.code);
        match short.filter(|_| sentences.iter().all(|said| said.foreign)) {
            Some(words) => words.to_owned(),
            None => t.form_faults().into_owned(),
        }
    }

    pub fn sentences(&self, t: &Texts) -> Vec<Said> {
        let faults = self.faults.iter().map(|fault| fault.detail.as_str());
        let mut sentences: Vec<&str> = faults.collect();
        if sentences.is_empty() {
            sentences.extend(self.detail.as_deref().filter(|detail| !detail.is_empty()));
        }
        let said = |sentence| Said::detail(*t, sentence);
        sentences.into_iter().map(said).collect()
    }
}

/// Redirects to the next page when it is done, else shows the form again with its errors.
///
/// # Errors
/// What no form can mend becomes an error page.
pub async fn redirect_or_show_errors<T>(
    done: Result<T, Refusal>,
    next: impl FnOnce(T) -> String,
    form: impl AsyncFnOnce(FormErrors) -> PageResult,
) -> PageResult {
    match done {
        Ok(done) => Ok(see_other(&next(done))),
        Err(refusal) => form(FormErrors::from_refusal(refusal)?).await,
    }
}
