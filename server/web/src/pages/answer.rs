//! From a template to an answer.

use actix_web::HttpResponse;
use actix_web::cookie::Cookie;
use actix_web::http::StatusCode;
use actix_web::http::header::{CONTENT_ENCODING, ContentType, LOCATION, VARY};
use app::Refusal;
use askama::Template;

use super::visit::Frame;
use crate::problem::Problem;

/// What a page's handler answers.
pub type PageAnswer = Result<HttpResponse, Problem>;

/// A template in the frame of every page.
pub trait Page: Template {
    /// The frame.
    fn frame(&self) -> &Frame;
}

/// Makes a template with the fields `frame` and `t` a page.
macro_rules! framed {
    ($page:ty) => {
        impl $crate::pages::answer::Page for $page {
            fn frame(&self) -> &$crate::pages::visit::Frame {
                &self.frame
            }
        }
    };
}
pub(super) use framed;

/// 200 with a page.
///
/// # Errors
/// A fault of the template itself.
pub fn show(page: &impl Page) -> PageAnswer {
    show_as(StatusCode::OK, page)
}

/// A page with another status: a form that comes back with its faults.
///
/// # Errors
/// As [`show`].
pub fn show_as(status: StatusCode, page: &impl Page) -> PageAnswer {
    let text = page
        .render()
        .map_err(|fault| Refusal::Broken(fault.to_string()))?;
    let mut response = HttpResponse::build(status);
    response
        .insert_header(ContentType::html())
        .insert_header((VARY, "accept-encoding, accept-language, cookie"));
    if let Some(cookie) = &page.frame().new_visit {
        response.cookie(cookie.clone());
    }
    let coding = page.frame().coding;
    let small = coding.and_then(|coding| Some((coding, coding.encode(text.as_bytes())?)));
    Ok(match small {
        Some((coding, small)) => response
            .insert_header((CONTENT_ENCODING, coding.name()))
            .body(small),
        None => response.body(text),
    })
}

/// 200 with a part of a page.
///
/// # Errors
/// As [`show`].
pub fn fragment(part: &impl Template) -> PageAnswer {
    let text = part
        .render()
        .map_err(|fault| Refusal::Broken(fault.to_string()))?;
    Ok(HttpResponse::Ok()
        .insert_header(ContentType::html())
        .body(text))
}

/// 303: done; look there.
pub fn go(address: &str) -> HttpResponse {
    HttpResponse::SeeOther()
        .insert_header((LOCATION, address))
        .finish()
}

/// The same, with a cookie for the browser to keep or to forget.
pub fn go_with(address: &str, cookie: Cookie<'static>) -> HttpResponse {
    HttpResponse::SeeOther()
        .insert_header((LOCATION, address))
        .cookie(cookie)
        .finish()
}

/// An address on this very server, or the front page: a form never leads elsewhere.
pub fn own_address(text: &str) -> &str {
    let local = text.starts_with('/')
        && !text.starts_with("//")
        && text
            .bytes()
            .all(|byte| byte.is_ascii_graphic() && byte != b'\\');
    if local { text } else { "/" }
}

/// For a value in a query: everything but letters, digits and a few marks (RFC 3986, 2.3).
pub fn percent_encode(text: &str) -> String {
    text.bytes()
        .map(|byte| match byte {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'-' | b'.' | b'_' | b'~' | b'/' => {
                char::from(byte).to_string()
            }
            other => format!("%{other:02X}"),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_form_never_leads_to_another_server() {
        assert_eq!(own_address("/clubs/1?x=2"), "/clubs/1?x=2");
        for foreign in [
            "//evil.example",
            "https://evil.example",
            "/\\evil.example",
            "/\t/evil.example",
            "/\u{b}/evil.example",
            "",
        ] {
            assert_eq!(own_address(foreign), "/");
        }
    }
}
