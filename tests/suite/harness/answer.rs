//! An HTTP response, with its body as a type.

use std::marker::PhantomData;

use reqwest::blocking::Response;
use reqwest::header::HeaderMap;
use serde::de::DeserializeOwned;
use serde_json::Value;

use super::problem::Problem;

/// What the server answered, and what it was asked. A successful body is a `T`.
#[derive(Debug)]
pub struct Answer<T = Value> {
    pub asked: String,
    pub status: u16,
    pub headers: HeaderMap,
    pub body: Vec<u8>,
    of: PhantomData<fn() -> T>,
}

impl Answer {
    pub(super) fn read(asked: String, response: Response) -> reqwest::Result<Self> {
        Ok(Self {
            asked,
            status: response.status().as_u16(),
            headers: response.headers().clone(),
            body: response.bytes()?.to_vec(),
            of: PhantomData,
        })
    }
}

impl<T: DeserializeOwned> Answer<T> {
    /// The body of a successful answer; an answer without one is `null`.
    #[track_caller]
    pub fn expect(self, status: u16) -> T {
        self.with_status(status).view()
    }

    /// The body, for whoever needs the headers as well.
    #[track_caller]
    pub fn view(&self) -> T {
        let body: &[u8] = if self.body.is_empty() {
            b"null"
        } else {
            &self.body
        };
        serde_json::from_slice(body)
            .unwrap_or_else(|fault| panic!("{}: {fault} in {}", self.asked, self.text()))
    }
}

impl<T> Answer<T> {
    /// The same answer, whose body is a `U`.
    pub fn of<U>(self) -> Answer<U> {
        Answer {
            asked: self.asked,
            status: self.status,
            headers: self.headers,
            body: self.body,
            of: PhantomData,
        }
    }

    /// Where something new is found.
    #[track_caller]
    pub fn location(self, status: u16) -> String {
        let answer = self.with_status(status);
        answer.header("location").unwrap().to_owned()
    }

    /// The answer itself, if it has this status.
    #[track_caller]
    pub fn with_status(self, status: u16) -> Self {
        assert_eq!(self.status, status, "{}: {}", self.asked, self.text());
        self
    }

    /// The problem document (RFC 9457) of a refusal, by the last part of its type's address.
    #[track_caller]
    pub fn refused(self, status: u16, code: &str) -> Problem {
        let answer = self.with_status(status);
        assert_eq!(
            answer.header("content-type"),
            Some("application/problem+json"),
            "{}",
            answer.asked
        );
        let problem = Problem::read(answer.json());
        assert_eq!(problem.code(), code, "{}: {problem}", answer.asked);
        assert_eq!(problem.status, status, "{}: {problem}", answer.asked);
        problem
    }

    pub fn header(&self, name: &str) -> Option<&str> {
        self.headers.get(name)?.to_str().ok()
    }

    /// The version that a conditional request names.
    #[track_caller]
    pub fn etag(&self) -> String {
        self.header("etag").unwrap().to_owned()
    }

    pub fn text(&self) -> String {
        String::from_utf8_lossy(&self.body).into_owned()
    }

    /// The body as it came.
    #[track_caller]
    pub fn json(&self) -> Value {
        serde_json::from_slice(&self.body)
            .unwrap_or_else(|fault| panic!("{}: {fault} in {}", self.asked, self.text()))
    }
}
