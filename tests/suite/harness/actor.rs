use std::sync::{Arc, Mutex};
use std::time::Duration;

use reqwest::Method;
use reqwest::blocking::{Client, RequestBuilder};
use serde_json::{Value, json};

use super::answer::Answer;

/// No request hangs for longer, whatever befalls the server.
const PATIENCE: Duration = Duration::from_secs(15);

const PASSWORD: &str = "six lanterns on the ford";

/// Somebody who talks to the server: a visitor, or a person with an account.
#[derive(Clone)]
pub struct Actor {
    http: Client,
    address: String,
    email: Option<String>,
    token: Arc<Mutex<Option<String>>>,
}

impl Actor {
    pub(super) fn visit(address: &str) -> Self {
        let http = Client::builder()
            .no_proxy()
            .timeout(PATIENCE)
            .redirect(reqwest::redirect::Policy::none())
            .build()
            .unwrap();
        Self {
            http,
            address: address.to_owned(),
            email: None,
            token: Arc::default(),
        }
    }

    /// Registers under a handle such as `Wennable` and signs in.
    pub(super) fn register(address: &str, handle: &str) -> Self {
        let email = format!("{}@example.org", handle.to_lowercase());
        let visitor = Self::visit(address);
        let body = json!({ "email": email, "name": handle, "password": PASSWORD });
        visitor.post("/api/v1/accounts", &body).expect(202);
        let person = Self {
            email: Some(email),
            ..visitor
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

    pub fn get(&self, path: &str) -> Answer {
        self.ask(Method::GET, path, |request| request)
    }

    /// Without signing in again where the token has run out.
    pub fn get_as_is(&self, path: &str) -> Answer {
        self.ask_once(&Method::GET, path, |request| request)
    }

    pub fn post(&self, path: &str, body: &Value) -> Answer {
        self.ask(Method::POST, path, |request| request.json(body))
    }

    /// A request to a server that may end before it answers; then nobody knows what became of it.
    pub fn try_post(&self, path: &str, body: &Value) -> Option<Answer> {
        self.send(&Method::POST, path, |request| request.json(body))
            .ok()
    }

    /// Any request; `dress` adds headers, a body or a query.
    ///
    /// The league's clock moves by weeks in a story: a person whose token has run out signs in again,
    /// as a client program does.
    pub fn ask(
        &self,
        method: Method,
        path: &str,
        dress: impl Fn(RequestBuilder) -> RequestBuilder,
    ) -> Answer {
        let first = self.ask_once(&method, path, &dress);
        if first.status != 401 || self.email.is_none() {
            return first;
        }
        self.sign_in();
        self.ask_once(&method, path, &dress)
    }

    fn ask_once(
        &self,
        method: &Method,
        path: &str,
        dress: impl Fn(RequestBuilder) -> RequestBuilder,
    ) -> Answer {
        self.send(method, path, dress).unwrap()
    }

    fn send(
        &self,
        method: &Method,
        path: &str,
        dress: impl Fn(RequestBuilder) -> RequestBuilder,
    ) -> reqwest::Result<Answer> {
        let mut request = self
            .http
            .request(method.clone(), format!("{}{path}", self.address));
        if let Some(token) = self.token.lock().unwrap().as_ref() {
            request = request.bearer_auth(token);
        }
        Answer::read(format!("{method} {path}"), dress(request).send()?)
    }

    fn sign_in(&self) {
        let body = json!({ "email": self.email, "password": PASSWORD });
        let request = self
            .http
            .post(format!("{}/api/v1/sessions", self.address))
            .json(&body);
        let asked = "POST /api/v1/sessions".to_owned();
        let answer = Answer::read(asked, request.send().unwrap()).unwrap();
        let token = answer.expect(200)["access_token"]
            .as_str()
            .unwrap()
            .to_owned();
        *self.token.lock().unwrap() = Some(token);
    }
}
