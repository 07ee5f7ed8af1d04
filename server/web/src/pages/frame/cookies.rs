//! The cookies of the pages. Both secrets are `__Host-` cookies: only this very host, only over TLS
//! (or loopback), never to be read by a script.

use actix_web::HttpRequest;
use actix_web::cookie::time::Duration;
use actix_web::cookie::{Cookie, SameSite};
use messages::Language;

/// Holds the secret of a signed-in browser.
pub const SESSION: &str = "__Host-session";
/// Holds the CSRF secret of a browser that has not signed in.
pub const VISIT: &str = "__Host-visit";
/// Holds the language that the reader chose.
pub const LANGUAGE: &str = "language";

/// A secret for the browser, forgotten when it is closed unless `days` are given.
pub fn secret_cookie(name: &'static str, value: String, days: Option<i64>) -> Cookie<'static> {
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
pub fn language_cookie(language: Language) -> Cookie<'static> {
    Cookie::build(LANGUAGE, language.code())
        .path("/")
        .http_only(true)
        .same_site(SameSite::Lax)
        .max_age(Duration::days(365))
        .finish()
}

/// Has the browser forget a secret.
pub fn removal_cookie(name: &'static str) -> Cookie<'static> {
    let mut cookie = secret_cookie(name, String::new(), None);
    cookie.make_removal();
    cookie
}

/// The value of a cookie of the request.
pub fn value(request: &HttpRequest, name: &str) -> Option<String> {
    request
        .cookie(name)
        .map(|cookie| cookie.value().to_owned())
        .filter(|value| !value.is_empty())
}
