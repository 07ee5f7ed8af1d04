//! Somebody of the demo, talking to the server like any client program.

use reqwest::{Method, StatusCode};
use serde_json::{Value, json};
use tokio::sync::Mutex;

use super::data::{PASSWORD, Person};

/// Why the demo could not be loaded.
#[derive(Debug, thiserror::Error)]
pub enum LoadFault {
    /// No answer.
    #[error("the server did not answer: {0}")]
    Silence(#[from] reqwest::Error),
    /// An answer that was not expected.
    #[error("{asked} was refused with {status}: {said}")]
    Refused {
        /// The request.
        asked: String,
        /// Its status.
        status: StatusCode,
        /// The problem.
        said: String,
    },
    /// An answer without the member that was looked for.
    #[error("an answer has no {0}")]
    Missing(&'static str),
    /// A file of the demo that does not fit.
    #[error("a file of the demo: {0}")]
    File(#[from] serde_json::Error),
    /// The clock could not be moved.
    #[error("the clock of the database: {0}")]
    Clock(#[from] tokio_postgres::Error),
}

/// A person with an account.
pub struct Client {
    http: reqwest::Client,
    address: String,
    email: String,
    tokens: Mutex<Tokens>,
}

#[derive(Default)]
struct Tokens {
    access: String,
    refresh: String,
}

impl Client {
    /// Registers.
    ///
    /// # Errors
    /// [`LoadFault`]; so with everything here.
    pub async fn register(
        http: &reqwest::Client,
        address: &str,
        person: &Person,
    ) -> Result<Self, LoadFault> {
        let client = Self {
            http: http.clone(),
            address: address.to_owned(),
            email: person.email(),
            tokens: Mutex::default(),
        };
        let body = json!({
            "email": client.email,
            "name": person.handle,
            "password": PASSWORD,
            "minor": person.minor,
            "guardian_consent": person.minor,
        });
        client
            .send(&Method::POST, "/api/v1/accounts", Some(&body))
            .await?;
        client.renew().await?;
        Ok(client)
    }

    /// Reads.
    ///
    /// # Errors
    /// [`LoadFault`].
    pub async fn get(&self, path: &str) -> Result<Value, LoadFault> {
        self.ask(Method::GET, path, None).await
    }

    /// Acts.
    ///
    /// # Errors
    /// [`LoadFault`].
    pub async fn post(&self, path: &str, body: &Value) -> Result<Value, LoadFault> {
        self.ask(Method::POST, path, Some(body)).await
    }

    /// Writes anew.
    ///
    /// # Errors
    /// [`LoadFault`].
    pub async fn put(&self, path: &str, body: &Value) -> Result<Value, LoadFault> {
        self.ask(Method::PUT, path, Some(body)).await
    }

    /// Changes.
    ///
    /// # Errors
    /// [`LoadFault`].
    pub async fn patch(&self, path: &str, body: &Value) -> Result<Value, LoadFault> {
        self.ask(Method::PATCH, path, Some(body)).await
    }

    /// The clock leaps by days: a token that has run out is renewed.
    async fn ask(
        &self,
        method: Method,
        path: &str,
        body: Option<&Value>,
    ) -> Result<Value, LoadFault> {
        match self.send(&method, path, body).await {
            Err(LoadFault::Refused {
                status: StatusCode::UNAUTHORIZED,
                ..
            }) => {
                self.renew().await?;
                self.send(&method, path, body).await
            }
            answer => answer,
        }
    }

    async fn renew(&self) -> Result<(), LoadFault> {
        let refresh = json!({ "refresh_token": self.tokens.lock().await.refresh });
        let pair = match self
            .send(&Method::POST, "/api/v1/sessions/refresh", Some(&refresh))
            .await
        {
            Ok(pair) => pair,
            Err(_) => {
                let body = json!({ "email": self.email, "password": PASSWORD });
                self.send(&Method::POST, "/api/v1/sessions", Some(&body))
                    .await?
            }
        };
        *self.tokens.lock().await = Tokens {
            access: text(&pair, "access_token")?,
            refresh: text(&pair, "refresh_token")?,
        };
        Ok(())
    }

    async fn send(
        &self,
        method: &Method,
        path: &str,
        body: Option<&Value>,
    ) -> Result<Value, LoadFault> {
        let mut request = self
            .http
            .request(method.clone(), format!("{}{path}", self.address));
        let access = self.tokens.lock().await.access.clone();
        if !access.is_empty() {
            request = request.bearer_auth(access);
        }
        if let Some(body) = body {
            request = request.json(body);
            // Keys belong to an account, and nobody of the demo reports a game twice.
            let last = path.rsplit("/games/").next().unwrap_or(path);
            request = request.header("idempotency-key", last);
        }
        let answer = request.send().await?;
        let status = answer.status();
        let said = answer.text().await?;
        if !status.is_success() {
            let asked = format!("{method} {path}");
            return Err(LoadFault::Refused {
                asked,
                status,
                said,
            });
        }
        Ok(if said.is_empty() {
            Value::Null
        } else {
            serde_json::from_str(&said)?
        })
    }
}

/// A member that is a text.
///
/// # Errors
/// [`LoadFault::Missing`].
pub fn text(value: &Value, member: &'static str) -> Result<String, LoadFault> {
    let text = value.get(member).and_then(Value::as_str);
    text.map(str::to_owned).ok_or(LoadFault::Missing(member))
}
