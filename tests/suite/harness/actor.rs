//! An HTTP client with a session of its own.

use std::sync::{Arc, Mutex};
use std::time::Duration;

use reqwest::Method;
use reqwest::blocking::{Client, RequestBuilder};
use serde::Serialize;
use serde_json::{Value, json};

use super::answer::Answer;
use super::league::Tokens;

/// No request hangs for longer, whatever befalls the server.
const TIMEOUT: Duration = Duration::from_secs(60);

const PASSWORD: &str = "six lanterns on the ford";

/// Somebody who talks to the server: a visitor, or a person with an account.
#[derive(Clone)]
pub struct Actor {
    http: Client,
    address: String,
    email: Option<String>,
    tokens: Arc<Mutex<Option<Tokens>>>,
    /// Held by whoever fetches the next tokens: a refresh token that is sent twice ends the session.
    renewing: Arc<Mutex<()>>,
}

impl Actor {
    pub(super) fn visit(address: &str) -> Self {
        let http = Client::builder()
            .no_proxy()
            .timeout(TIMEOUT)
            .redirect(reqwest::redirect::Policy::none())
            .build()
            .unwrap();
        Self {
            http,
            address: address.to_owned(),
            email: None,
            tokens: Arc::default(),
            renewing: Arc::default(),
        }
    }

    /// Registers under a handle such as `Wennable` and signs in.
    pub(super) fn register(address: &str, handle: &str) -> Self {
        let email = format!("{}@example.org", handle.to_lowercase());
        let visitor = Self::visit(address);
        let body = json!({ "email": email, "name": handle, "password": PASSWORD });
        visitor.post("/api/v1/accounts", &body).expect(202);
        Self::sign_in_as(address, handle)
    }

    /// Signs in to the account of a handle.
    pub(super) fn sign_in_as(address: &str, handle: &str) -> Self {
        let person = Self {
            email: Some(format!("{}@example.org", handle.to_lowercase())),
            ..Self::visit(address)
        };
        person.sign_in();
        person
    }

    /// The same person, talking to another server.
    pub(super) fn at(&self, address: &str) -> Self {
        Self {
            address: address.to_owned(),
            ..self.clone()
        }
    }

    /// A client program that holds this token and cannot get another.
    pub fn holding(&self, access: &str) -> Self {
        let tokens = Tokens {
            access: access.to_owned(),
            refresh: String::new(),
        };
        Self {
            email: None,
            tokens: Arc::new(Mutex::new(Some(tokens))),
            ..self.clone()
        }
    }

    pub fn has_account(&self) -> bool {
        self.email.is_some()
    }

    pub fn get(&self, path: &str) -> Answer {
        self.ask(Method::GET, path, |request| request)
    }

    /// Without signing in again where the token has run out.
    pub fn get_as_is(&self, path: &str) -> Answer {
        self.ask_once(&Method::GET, path, |request| request)
    }

    pub fn post(&self, path: &str, body: &impl Serialize) -> Answer {
        self.ask(Method::POST, path, |request| request.json(body))
    }

    /// A request to a server that may end before it answers; then nobody knows what became of it.
    pub fn try_post(&self, path: &str, body: &Value) -> Option<Answer> {
        self.send(&Method::POST, path, |request| request.json(body))
            .ok()
    }

    /// Any request; `build` adds headers, a body or a query.
    ///
    /// The league's clock moves by weeks in a story: a person whose token has run out gets the next
    /// one, as a client program does.
    pub fn ask(
        &self,
        method: Method,
        path: &str,
        build: impl Fn(RequestBuilder) -> RequestBuilder,
    ) -> Answer {
        let held = self.access();
        let first = self.ask_once(&method, path, &build);
        if first.status != 401 || self.email.is_none() {
            return first;
        }
        let one_at_a_time = self.renewing.lock().unwrap();
        if self.access() == held {
            self.renew();
        }
        drop(one_at_a_time);
        self.ask_once(&method, path, &build)
    }

    fn access(&self) -> Option<String> {
        let tokens = self.tokens.lock().unwrap();
        tokens.as_ref().map(|tokens| tokens.access.clone())
    }

    fn ask_once(
        &self,
        method: &Method,
        path: &str,
        build: impl Fn(RequestBuilder) -> RequestBuilder,
    ) -> Answer {
        self.send(method, path, build).unwrap()
    }

    fn send(
        &self,
        method: &Method,
        path: &str,
        build: impl Fn(RequestBuilder) -> RequestBuilder,
    ) -> reqwest::Result<Answer> {
        let mut request = self
            .http
            .request(method.clone(), format!("{}{path}", self.address));
        if let Some(tokens) = self.tokens.lock().unwrap().as_ref() {
            request = request.bearer_auth(&tokens.access);
        }
        Answer::read(format!("{method} {path}"), build(request).send()?)
    }

    /// The next tokens; signs in anew where the session has ended.
    fn renew(&self) {
        let held = self.tokens.lock().unwrap().clone();
        let answer = held.map(|tokens| {
            let body = json!({ "refresh_token": tokens.refresh });
            self.ask_for_tokens("/api/v1/sessions/refresh", &body)
        });
        match answer {
            Some(answer) if answer.status == 200 => self.keep(answer.view()),
            _ => self.sign_in(),
        }
    }

    fn sign_in(&self) {
        let body = json!({ "email": self.email, "password": PASSWORD });
        self.keep(self.ask_for_tokens("/api/v1/sessions", &body).expect(200));
    }

    fn ask_for_tokens(&self, path: &str, body: &Value) -> Answer<Tokens> {
        let request = self.http.post(format!("{}{path}", self.address)).json(body);
        let answer = Answer::read(format!("POST {path}"), request.send().unwrap());
        answer.unwrap().of()
    }

    fn keep(&self, tokens: Tokens) {
        *self.tokens.lock().unwrap() = Some(tokens);
    }
}

impl AsRef<Actor> for Actor {
    fn as_ref(&self) -> &Actor {
        self
    }
}
