//! An HTTP client with the cookie of a session at the pages.

use reqwest::Method;
use reqwest::blocking::RequestBuilder;
use tallyhost::demo::data;

use super::actor::Actor;
use super::answer::Answer;

/// A browser in which somebody has signed in to the pages.
#[derive(Clone)]
pub struct Browser {
    visitor: Actor,
    cookie: String,
}

impl Browser {
    /// Signs in through the form, as the person with this handle.
    pub(super) fn sign_in(visitor: Actor, handle: &str) -> Self {
        let form = visitor.get("/sign-in");
        let visit = cookie_of(&form);
        let token = token_of(&form);
        let email = format!("{}@example.org", handle.to_lowercase());
        let password = data::PASSWORD.replace(' ', "+");
        let fields = format!("token={token}&email={email}&password={password}");
        let build = |request: RequestBuilder| {
            request
                .header("cookie", &visit)
                .header("content-type", "application/x-www-form-urlencoded")
                .body(fields.clone())
        };
        let signed_in = visitor.ask(Method::POST, "/sign-in", build);
        let cookie = cookie_of(&signed_in.with_status(303));
        Self { visitor, cookie }
    }

    pub(super) fn at(&self, address: &str) -> Self {
        Self {
            visitor: self.visitor.at(address),
            cookie: self.cookie.clone(),
        }
    }

    pub fn get(&self, path: &str) -> Answer {
        self.ask(Method::GET, path, |request| request)
    }

    /// Sends a form of a page to an address, with what its fields say.
    pub fn send(&self, page: &str, address: &str, fields: &[(&str, &str)]) -> Answer {
        let token = token_of(&self.get(page).with_status(200));
        let mut body = format!("token={token}");
        for (name, value) in fields {
            body.push_str(&format!("&{}={}", encode(name), encode(value)));
        }
        self.ask(Method::POST, address, |request| {
            request
                .header("content-type", "application/x-www-form-urlencoded")
                .body(body.clone())
        })
    }

    /// Any request; `build` adds headers.
    pub fn ask(
        &self,
        method: Method,
        path: &str,
        build: impl Fn(RequestBuilder) -> RequestBuilder,
    ) -> Answer {
        self.visitor.ask(method, path, |request| {
            build(request.header("cookie", &self.cookie))
        })
    }
}

/// The CSRF token in the forms of a page.
fn token_of(page: &Answer) -> String {
    let page = page.text();
    let (_, rest) = page.split_once("name=\"token\" value=\"").unwrap();
    rest.split('"').next().unwrap().to_owned()
}

/// As forms send it: letters and digits as they are, every other byte by its number.
fn encode(text: &str) -> String {
    let encoded = text.bytes().map(|byte| match byte {
        b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' => char::from(byte).to_string(),
        other => format!("%{other:02X}"),
    });
    encoded.collect()
}

/// Name and value of the cookie that came with an answer.
fn cookie_of(answer: &Answer) -> String {
    let cookie = answer.header("set-cookie").unwrap();
    cookie.split(';').next().unwrap().to_owned()
}
