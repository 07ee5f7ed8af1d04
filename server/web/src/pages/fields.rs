//! What somebody typed into a form. Reading it checks where the form came from, so that no handler
//! can forget to.

use std::future::Future;
use std::pin::Pin;
use std::str::FromStr;

use actix_web::dev::Payload;
use actix_web::web::Query;
use actix_web::{FromRequest, HttpRequest};

use super::csrf;
use super::visit::Visit;
use crate::body::{MOST_CATALOGUE_BYTES, collect, collect_file};
use crate::problem::{Problem, WireFault};

/// The fields of a form of ours, in the order of the page; a name may come more than once.
#[derive(Clone, Debug, Default)]
pub struct Fields(Vec<(String, String)>);

/// The fields of a form that carries a catalogue: long, once somebody is signed in.
pub struct LongFields(pub Fields);

impl FromRequest for Fields {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let body = collect(request, payload);
        let request = request.clone();
        Box::pin(async move { Self::of_ours(&request, &body.await?) })
    }
}

impl FromRequest for LongFields {
    type Error = Problem;
    type Future = Pin<Box<dyn Future<Output = Result<Self, Problem>>>>;

    fn from_request(request: &HttpRequest, payload: &mut Payload) -> Self::Future {
        let (request, mut payload) = (request.clone(), payload.take());
        Box::pin(async move {
            let visit = Visit::extract(&request).await?;
            let body = match visit.viewer {
                None => collect(&request, &mut payload).await?,
                Some(_) => collect_file(&request, &mut payload, MOST_CATALOGUE_BYTES).await?,
            };
            Fields::of_ours(&request, &body).map(Self)
        })
    }
}

impl Fields {
    /// Fields that were read elsewhere, or are filled in from what is kept.
    pub fn of(fields: Vec<(String, String)>) -> Self {
        Self(fields)
    }

    /// Of a form that came from our own page.
    fn of_ours(request: &HttpRequest, body: &[u8]) -> Result<Self, Problem> {
        let fields = Self::read(body)?;
        csrf::check(request, fields.text(csrf::FIELD))?;
        Ok(fields)
    }

    /// Out of `application/x-www-form-urlencoded` (WHATWG URL Standard, section 5.1).
    fn read(body: &[u8]) -> Result<Self, Problem> {
        let unreadable = || Problem::wire(WireFault::InvalidParameter);
        let text = std::str::from_utf8(body).map_err(|_| unreadable())?;
        Query::<Vec<(String, String)>>::from_query(text)
            .map(|query| Self(query.into_inner()))
            .map_err(|_| unreadable())
    }

    /// What stands in a field, without space around it; empty when it was not sent.
    pub fn text(&self, name: &str) -> &str {
        self.sent(name).unwrap_or_default().trim()
    }

    /// What stands in a field, as it was typed.
    pub fn sent(&self, name: &str) -> Option<&str> {
        let mut all = self.0.iter();
        all.find(|(key, _)| key == name)
            .map(|(_, value)| value.as_str())
    }

    /// Every value sent under a name.
    pub fn all(&self, name: &str) -> Vec<String> {
        let named = self.0.iter().filter(|(key, _)| key == name);
        named.map(|(_, value)| value.trim().to_owned()).collect()
    }

    /// Whether a box is ticked.
    pub fn ticked(&self, name: &str) -> bool {
        self.sent(name).is_some()
    }

    /// A number or another value with a text form, if that is what stands there.
    pub fn value<T: FromStr>(&self, name: &str) -> Option<T> {
        self.text(name).parse().ok()
    }

    /// Every field but the token, to be carried on to the next step.
    pub fn carried(&self) -> impl Iterator<Item = (&str, &str)> {
        let all = self
            .0
            .iter()
            .map(|(key, value)| (key.as_str(), value.as_str()));
        all.filter(|(key, _)| *key != csrf::FIELD)
    }
}
