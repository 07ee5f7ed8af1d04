//! The base of every client: an address of the API with the actor who sends requests.

use std::fmt::Display;

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use serde::Serialize;
use serde_json::{Value, json};

use crate::harness::{Actor, Answer};

const API: &str = "/api/v1";

/// An address of the API, and who asks there.
#[derive(Clone)]
pub struct Resource {
    pub actor: Actor,
    pub path: String,
}

impl Resource {
    pub fn new(actor: &Actor, path: impl Into<String>) -> Self {
        let (actor, path) = (actor.clone(), path.into());
        Self { actor, path }
    }

    pub fn by(&self, actor: impl AsRef<Actor>) -> Self {
        Self::new(actor.as_ref(), self.path.clone())
    }

    pub fn below(&self, part: impl Display) -> Self {
        Self::new(&self.actor, self.at(part))
    }

    /// The last part of the address.
    pub fn id(&self) -> &str {
        self.path.rsplit('/').next().unwrap()
    }

    /// The address of a page; `part` is empty for the page of the resource itself.
    pub fn page(&self, part: &str) -> String {
        let page = self.at(part);
        page.strip_prefix(API).unwrap().to_owned()
    }

    /// An address of the read service.
    pub fn public(&self, part: &str) -> String {
        format!("/public{}", self.page(part))
    }

    pub fn at(&self, part: impl Display) -> String {
        format!("{}/{part}", self.path)
            .trim_end_matches('/')
            .to_owned()
    }

    pub fn get<T>(&self, part: impl Display) -> Answer<T> {
        self.actor.get(&self.at(part)).of()
    }

    /// Sends a body.
    pub fn post<T>(&self, part: impl Display, body: &impl Serialize) -> Answer<T> {
        self.send(Method::POST, part, &json!(body))
    }

    /// Does what needs no more words.
    pub fn act<T>(&self, part: impl Display) -> Answer<T> {
        self.send(Method::POST, part, &json!({}))
    }

    pub fn put<T>(&self, part: impl Display, body: &impl Serialize) -> Answer<T> {
        self.send(Method::PUT, part, &json!(body))
    }

    pub fn patch<T>(&self, part: impl Display, body: &impl Serialize) -> Answer<T> {
        self.send(Method::PATCH, part, &json!(body))
    }

    pub fn delete<T>(&self, part: impl Display) -> Answer<T> {
        self.ask(Method::DELETE, part, |request| request)
    }

    /// Any request; `build` adds headers, a body or a query.
    pub fn ask<T>(
        &self,
        method: Method,
        part: impl Display,
        build: impl Fn(RequestBuilder) -> RequestBuilder,
    ) -> Answer<T> {
        self.actor.ask(method, &self.at(part), build).of()
    }

    fn send<T>(&self, method: Method, part: impl Display, body: &Value) -> Answer<T> {
        self.ask(method, part, |request| request.json(body))
    }
}

/// A client of one kind of address: it derefs to its address, and can be used by somebody else.
macro_rules! client {
    ($($(#[$doc:meta])* $name:ident;)*) => {$(
        $(#[$doc])*
        #[derive(Clone)]
        pub struct $name(pub(in crate::harness) $crate::harness::league::resource::Resource);

        impl $name {
            /// The same, asked by somebody else.
            pub fn by(&self, actor: impl AsRef<$crate::harness::Actor>) -> Self {
                Self(self.0.by(actor))
            }
        }

        impl std::ops::Deref for $name {
            type Target = $crate::harness::league::resource::Resource;

            fn deref(&self) -> &Self::Target {
                &self.0
            }
        }
    )*};
}
pub(in crate::harness) use client;
