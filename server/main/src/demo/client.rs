//! The HTTP client of one person of the demo.

use reqwest::{Method, StatusCode};
use serde_json::{Value, json};
use tokio::sync::Mutex;

use super::data::{PASSWORD, Person};

/// Why the demo could not be loaded.
#[derive(Debug, thiserror::Error)]
pub enum LoadError {
    #[error("the server did not answer: {0}")]
    NoResponse(#[from] reqwest::Error),
    /// An answer that was not expected.
    #[error("{asked} was refused with {status}: {said}")]
    Refused {
        asked: String,
        status: StatusCode,
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
    /// Registers an account and signs in.
    ///
    /// # Errors
    /// [`LoadError`]; so with everything here.
    pub async fn register(
        http: &reqwest::Client,
        address: &str,
        person: &Person,
    ) -> Result<Self, LoadError> {
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

    pub async fn get(&self, path: &str) -> Result<Value, LoadError> {
        self.request(Method::GET, path, None).await
    }

    pub async fn post(&self, path: &str, body: &Value) -> Result<Value, LoadError> {
        self.request(Method::POST, path, Some(body)).await
    }

    pub async fn put(&self, path: &str, body: &Value) -> Result<Value, LoadError> {
        self.request(Method::PUT, path, Some(body)).await
    }

    pub async fn patch(&self, path: &str, body: &Value) -> Result<Value, LoadError> {
        self.request(Method::PATCH, path, Some(body)).await
    }

    /// The clock leaps by days, so that a token may have expired: it is renewed.
    async fn request(
        &self,
        method: Method,
        path: &str,
        body: Option<&Value>,
    ) -> Result<Value, LoadError> {
        match self.send(&method, path, body).await {
            Err(LoadError::Refused {
                status: StatusCode::UNAUTHORIZED,
                ..
            }) => {
                self.renew().await?;
                self.send(&method, path, body).await
            }
            response => response,
        }
    }

    async fn renew(&self) -> Result<(), LoadError> {
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
    ) -> Result<Value, LoadError> {
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
        let response = request.send().await?;
        let status = response.status();
        let said = response.text().await?;
        if !status.is_success() {
            let asked = format!("{method} {path}");
            return Err(LoadError::Refused {
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
/// [`LoadError::Missing`].
pub fn text(value: &Value, member: &'static str) -> Result<String, LoadError> {
    let text = value.get(member).and_then(Value::as_str);
    text.map(str::to_owned).ok_or(LoadError::Missing(member))
}
