//! The fields of a form. The extractor verifies the CSRF token, so that no handler can forget to.

use std::future::Future;
use std::pin::Pin;

use actix_web::dev::Payload;
use actix_web::web::Query;
use actix_web::{FromRequest, HttpRequest};

use super::csrf;
use super::page_request::PageRequest;
use crate::body::{MAX_CATALOGUE_BYTES, read_body, read_file_body};
use crate::problem::{HttpFault, Problem};

/// Extractor: the fields of a form, in the order of the page; a name may come more than once.
#[derive(Clone, Debug, Default)]
pub struct FormData(Vec<(String, String)>);

/// Extractor: the fields of a form that carries a catalogue. Only who is signed in may send so much.
pub struct LargeFormData(pub FormData);

impl FromRequest for FormData {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let body = read_body(request, payload);
        let request = request.clone();
        Box::pin(async move { Self::verified(&request, &body.await?) })
    }
}

impl FromRequest for LargeFormData {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let (request, mut payload) = (request.clone(), payload.take());
        Box::pin(async move {
            let page_request = PageRequest::extract(&request).await?;
            let body = match page_request.viewer {
                None => read_body(&request, &mut payload).await?,
                Some(_) => read_file_body(&request, &mut payload, MAX_CATALOGUE_BYTES).await?,
            };
            FormData::verified(&request, &body).map(Self)
        })
    }
}

impl FormData {
    /// Fields of a multipart form, or filled in from what is saved.
    pub fn from_pairs(fields: Vec<(String, String)>) -> Self {
        Self(fields)
    }

    /// Adds what stands in the fields that were not sent.
    #[must_use]
    pub fn with_defaults<'d>(
        mut self,
        defaults: impl IntoIterator<Item = (&'d str, String)>,
    ) -> Self {
        for (name, value) in defaults {
            if self.raw(name).is_none() {
                self.0.push((name.to_owned(), value));
            }
        }
        self
    }

    /// Parses a body and verifies its token.
    fn verified(request: &HttpRequest, body: &[u8]) -> Result<Self, Problem> {
        let fields = Self::parse_body(body)?;
        csrf::verify(request, fields.text(csrf::FIELD))?;
        Ok(fields)
    }

    /// Parses `application/x-www-form-urlencoded` (WHATWG URL Standard, section 5.1).
    fn parse_body(body: &[u8]) -> Result<Self, Problem> {
        let unreadable = || Problem::http(HttpFault::InvalidParameter);
        let text = std::str::from_utf8(body).map_err(|_| unreadable())?;
        Query::<Vec<(String, String)>>::from_query(text)
            .map(|query| Self(query.into_inner()))
            .map_err(|_| unreadable())
    }

    /// What stands in a field, without space around it; empty when it was not sent.
    pub fn text(&self, name: &str) -> &str {
        self.typed(name).trim()
    }

    /// What stands in a field exactly as it was typed; empty when it was not sent.
    pub fn typed(&self, name: &str) -> &str {
        self.raw(name).unwrap_or("")
    }

    /// What stands in a field exactly as it was typed, if it was sent.
    pub fn raw(&self, name: &str) -> Option<&str> {
        let mut all = self.0.iter();
        all.find(|(key, _)| key == name)
            .map(|(_, value)| value.as_str())
    }

    /// Every value sent under a name.
    pub fn values(&self, name: &str) -> Vec<String> {
        let named = self.0.iter().filter(|(key, _)| key == name);
        named.map(|(_, value)| value.trim().to_owned()).collect()
    }

    /// Whether a box is ticked.
    pub fn is_checked(&self, name: &str) -> bool {
        self.raw(name).is_some()
    }

    /// Every field but the token, to be carried on to the next step.
    pub fn without_token(&self) -> impl Iterator<Item = (&str, &str)> {
        let all = self
            .0
            .iter()
            .map(|(key, value)| (key.as_str(), value.as_str()));
        all.filter(|(key, _)| *key != csrf::FIELD)
    }
}
