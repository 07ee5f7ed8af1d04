//! The errors that are shown beside the form that caused them.

use std::borrow::Cow;
use std::fmt;

use actix_web::http::StatusCode;
use app::{Fault, Refusal};
use messages::{Message, Texts};

use super::response::{PageResult, see_other};
use crate::capitalized::capitalized;
use crate::problem::Problem;

/// The errors of a form; none at first.
#[derive(Debug, Default)]
pub struct FormErrors {
    /// About the whole.
    message: Option<Message>,
    /// Every fault with its place.
    faults: Vec<Fault>,
    /// Whether the page itself says what is wrong, in its place.
    is_shown_by_page: bool,
    status: StatusCode,
}

impl FormErrors {
    /// The refusal of a rule is shown beside the form.
    ///
    /// # Errors
    /// Any other refusal becomes an error page.
    pub fn from_refusal(refusal: Refusal) -> Result<Self, Problem> {
        let problem = match refusal {
            Refusal::Rule { .. } => Problem::from(refusal),
            other => return Err(other.into()),
        };
        Ok(Self::from_problem(&problem))
    }

    /// The errors of a JSON document that somebody pasted, or of a refusal.
    pub fn from_problem(problem: &Problem) -> Self {
        Self {
            message: Some(problem.detail_or_title()),
            faults: problem.faults().to_vec(),
            is_shown_by_page: false,
            status: problem.status(),
        }
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.message.is_none() && self.faults.is_empty()
    }

    /// Whether a field has a fault.
    pub fn is_at(&self, field: &str) -> bool {
        let mut pointers = self.faults.iter().map(|fault| &fault.pointer);
        pointers.any(|pointer| pointer.strip_prefix('/') == Some(field))
    }

    /// The attribute that marks a field with a fault.
    pub fn mark(&self, field: &str) -> Attributes {
        Attributes(match self.is_at(field) {
            true => " aria-invalid=\"true\"",
            false => "",
        })
    }

    /// The kind of input of a number. Browsers show nothing but numbers in a field of numbers: what
    /// else was typed stands in one of text.
    pub fn number_type(&self, field: &str) -> Attributes {
        Attributes(match self.is_at(field) {
            true => " type=\"text\" inputmode=\"numeric\" aria-invalid=\"true\"",
            false => " type=\"number\"",
        })
    }

    /// The status to show the form with.
    pub fn status(&self) -> StatusCode {
        self.status
    }

    /// Without the findings of a list, which its page shows in any case.
    #[must_use]
    pub fn without_list_findings(mut self) -> Self {
        let of_list = |fault: &Fault| fault.code.starts_with("list.");
        self.is_shown_by_page = !self.faults.is_empty() && self.faults.iter().all(of_list);
        self
    }

    /// What stands above the messages.
    pub fn heading(&self, t: &Texts) -> Cow<'static, str> {
        match self.is_shown_by_page {
            true => t.not_handed_in(),
            false => t.form_faults(),
        }
    }

    /// The message of each fault, else the one about the whole.
    pub fn messages(&self, t: &Texts) -> Vec<String> {
        let faults = self.faults.iter().map(|fault| &fault.message);
        let mut messages: Vec<&Message> = faults.collect();
        if messages.is_empty() {
            messages.extend(&self.message);
        }
        messages.retain(|_| !self.is_shown_by_page);
        let said = |message| capitalized(&t.say(message));
        messages.into_iter().map(said).collect()
    }
}

/// Attributes of an input, with a space before them.
pub struct Attributes(&'static str);

impl fmt::Display for Attributes {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0)
    }
}

/// Needs no escaping: nothing of it comes from outside.
impl askama::filters::HtmlSafe for Attributes {}

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
