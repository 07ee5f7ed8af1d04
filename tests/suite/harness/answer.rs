use reqwest::blocking::Response;
use reqwest::header::HeaderMap;
use serde_json::Value;

/// What the server answered, and what it was asked.
#[derive(Debug)]
pub struct Answer {
    pub asked: String,
    pub status: u16,
    pub headers: HeaderMap,
    pub body: Vec<u8>,
}

impl Answer {
    pub(super) fn read(asked: String, response: Response) -> reqwest::Result<Self> {
        Ok(Self {
            asked,
            status: response.status().as_u16(),
            headers: response.headers().clone(),
            body: response.bytes()?.to_vec(),
        })
    }

    /// The JSON of a successful answer, or nothing where it has no body.
    #[track_caller]
    pub fn expect(self, status: u16) -> Value {
        let answer = self.with_status(status);
        if answer.body.is_empty() {
            Value::Null
        } else {
            answer.json()
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
    pub fn refused(self, status: u16, code: &str) -> Value {
        assert_eq!(self.status, status, "{}: {}", self.asked, self.text());
        assert_eq!(
            self.header("content-type"),
            Some("application/problem+json"),
            "{}",
            self.asked
        );
        let problem = self.json();
        assert_eq!(
            problem["type"],
            format!("/problems/{code}"),
            "{}: {problem}",
            self.asked
        );
        assert_eq!(problem["status"], status, "{}: {problem}", self.asked);
        problem
    }

    pub fn header(&self, name: &str) -> Option<&str> {
        self.headers.get(name)?.to_str().ok()
    }

    pub fn text(&self) -> String {
        String::from_utf8_lossy(&self.body).into_owned()
    }

    #[track_caller]
    pub fn json(&self) -> Value {
        serde_json::from_slice(&self.body)
            .unwrap_or_else(|fault| panic!("{}: {fault} in {}", self.asked, self.text()))
    }
}
