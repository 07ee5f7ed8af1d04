//! From a template to an answer.

use actix_web::HttpResponse;
use actix_web::cookie::Cookie;
use actix_web::http::StatusCode;
use actix_web::http::header::{ContentType, LOCATION, VARY};
use app::Refusal;
use askama::Template;
use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, PercentEncode, utf8_percent_encode};

use super::compression::compress;
use super::page_request::Layout;
use crate::problem::Problem;

/// What a page's handler answers.
pub type PageResult = Result<HttpResponse, Problem>;

/// A template that extends the base template.
pub trait PageTemplate: Template {
    /// What the base template shows.
    fn layout(&self) -> &Layout;
}

/// Implements [`PageTemplate`] for a template with the fields `layout` and `t`.
macro_rules! page_template {
    ($page:ty) => {
        impl $crate::pages::frame::response::PageTemplate for $page {
            fn layout(&self) -> &$crate::pages::frame::page_request::Layout {
                &self.layout
            }
        }
    };
}
pub(in crate::pages) use page_template;

/// 200 with a page.
///
/// # Errors
/// [`Refusal::Internal`] when the template fails.
pub fn render_page(page: &impl PageTemplate) -> PageResult {
    render_page_with_status(StatusCode::OK, page)
}

/// A page with another status: a form that comes back with its faults.
///
/// # Errors
/// As [`render_page`].
pub fn render_page_with_status(status: StatusCode, page: &impl PageTemplate) -> PageResult {
    let text = page
        .render()
        .map_err(|error| Refusal::Internal(error.to_string()))?;
    let mut response = HttpResponse::build(status);
    response
        .insert_header(ContentType::html())
        .insert_header((VARY, "accept-encoding, accept-language, cookie"));
    if let Some(cookie) = &page.layout().new_visitor_cookie {
        response.cookie(cookie.clone());
    }
    let encoding = page.layout().content_encoding;
    Ok(match compress(encoding, text.as_bytes()) {
        Some(bytes) => response.insert_header(encoding).body(bytes),
        None => response.body(text),
    })
}

/// 200 with a part of a page, for the script.
///
/// # Errors
/// As [`render_page`].
pub fn render_fragment(part: &impl Template) -> PageResult {
    let text = part
        .render()
        .map_err(|error| Refusal::Internal(error.to_string()))?;
    Ok(HttpResponse::Ok()
        .insert_header(ContentType::html())
        .body(text))
}

/// 303 to another page, once an act is done.
pub fn see_other(address: &str) -> HttpResponse {
    HttpResponse::SeeOther()
        .insert_header((LOCATION, address))
        .finish()
}

/// 303 with a cookie to set or to remove.
pub fn redirect_with_cookie(address: &str, cookie: Cookie<'static>) -> HttpResponse {
    HttpResponse::SeeOther()
        .insert_header((LOCATION, address))
        .cookie(cookie)
        .finish()
}

/// A path on this server, else the front page: no open redirect.
pub fn local_path(text: &str) -> &str {
    let local = text.starts_with('/')
        && !text.starts_with("//")
        && text
            .bytes()
            .all(|byte| byte.is_ascii_graphic() && byte != b'\\');
    if local { text } else { "/" }
}

/// What a value in a query may hold as it is: RFC 3986, section 2.3, and the slashes of paths.
const QUERY_VALUE: &AsciiSet = &NON_ALPHANUMERIC
    .remove(b'-')
    .remove(b'.')
    .remove(b'_')
    .remove(b'~')
    .remove(b'/');

/// A value as it stands in a query.
pub fn percent_encode(text: &str) -> PercentEncode<'_> {
    utf8_percent_encode(text, QUERY_VALUE)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_form_never_leads_to_another_server() {
        assert_eq!(local_path("/clubs/1?x=2"), "/clubs/1?x=2");
        for foreign in [
            "//evil.example",
            "https://evil.example",
            "/\\evil.example",
            "/\t/evil.example",
            "/\u{b}/evil.example",
            "",
        ] {
            assert_eq!(local_path(foreign), "/");
        }
    }
}
