//! The cookies of the pages. Both secrets are `__Host-` cookies: only this very host, only over TLS
//! (or loopback), never to be read by a script.

use actix_web::HttpRequest;
use actix_web::cookie::time::Duration;
use actix_web::cookie::{Cookie, SameSite};

/// Holds the secret of a signed-in browser.
pub const SESSION: &str = "__Host-session";
/// Holds a secret that ties forms to a browser which has not signed in.
pub const VISIT: &str = "__Host-visit";
/// Holds the language that the reader chose.
pub const LANGUAGE: &str = "language";

/// A secret for the browser, forgotten when it is closed unless `days` are given.
pub fn secret(name: &'static str, value: String, days: Option<i64>) -> Cookie<'static> {
    let mut cookie = Cookie::build(name, value)
        .path("/")
        .secure(true)
        .http_only(true)
        .same_site(SameSite::Lax)
        .finish();
    if let Some(days) = days {
        cookie.set_max_age(Duration::days(days));
    }
    cookie
}

/// The reader's language, kept for a year.
pub fn language(code: &'static str) -> Cookie<'static> {
    Cookie::build(LANGUAGE, code)
        .path("/")
        .http_only(true)
        .same_site(SameSite::Lax)
        .max_age(Duration::days(365))
        .finish()
}

/// Takes a secret back.
pub fn removal(name: &'static str) -> Cookie<'static> {
    let mut cookie = secret(name, String::new(), None);
    cookie.make_removal();
    cookie
}

/// What the browser sent under this name.
pub fn sent(request: &HttpRequest, name: &str) -> Option<String> {
    request
        .cookie(name)
        .map(|cookie| cookie.value().to_owned())
        .filter(|value| !value.is_empty())
}
