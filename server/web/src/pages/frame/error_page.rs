//! The error page: a problem (RFC 9457) rendered for people.

use std::borrow::Cow;

use actix_web::http::header::ACCEPT;
use actix_web::http::{Method, StatusCode};
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use messages::{Message, Texts};

use super::page_request::{Layout, PageRequest};
use super::response::{page_template, percent_encode, render_page_with_status, see_other};
use crate::capitalized::capitalized;
use crate::problem::Problem;

#[derive(Template)]
#[template(path = "error_page.html")]
struct ErrorPage<'a> {
    layout: Layout,
    t: Texts,
    explanation: Option<Cow<'static, str>>,
    detail: String,
    faults: Vec<String>,
    /// Whether a form was sent: what was typed is still on the page before.
    sent: bool,
    /// Whether signing in would help.
    signed_out: bool,
    /// The page that explains this kind of refusal.
    kind: &'a str,
    request_id: &'a str,
}
page_template!(ErrorPage<'_>);

/// Whether the request comes from a browser, not from a program.
pub fn accepts_html(request: &HttpRequest) -> bool {
    let accept = request.headers().get(ACCEPT);
    let html = accept
        .and_then(|value| value.to_str().ok())
        .is_some_and(|value| value.contains("text/html"));
    html && !request.path().starts_with("/api/")
}

/// The page of a problem; a redirect to the sign-in page for a 401.
pub fn error_page(
    request: &HttpRequest,
    problem: &Problem,
    request_id: &str,
) -> Option<HttpResponse> {
    let status = problem.status();
    if status == StatusCode::UNAUTHORIZED && request.method() == Method::GET {
        let next = request.uri().to_string();
        let next = percent_encode(&next);
        return Some(see_other(&format!("/sign-in?next={next}")));
    }
    let page_request = PageRequest::anonymous(request);
    let said = |message: &Message| capitalized(&page_request.t.say(message));
    let page = ErrorPage {
        layout: page_request.layout(),
        t: page_request.t,
        explanation: explanation(page_request.t, problem),
        detail: said(&problem.detail_or_title()),
        faults: problem
            .faults()
            .iter()
            .map(|fault| said(&fault.message))
            .collect(),
        sent: request.method() == Method::POST,
        signed_out: status == StatusCode::UNAUTHORIZED,
        kind: &problem.page(),
        request_id,
    };
    render_page_with_status(status, &page).ok()
}

fn explanation(t: Texts, problem: &Problem) -> Option<Cow<'static, str>> {
    match problem.status() {
        _ if problem.code() == "csrf" => Some(t.refused_csrf()),
        StatusCode::NOT_FOUND => Some(t.refused_not_found()),
        StatusCode::SERVICE_UNAVAILABLE => Some(t.refused_unavailable()),
        StatusCode::INTERNAL_SERVER_ERROR => Some(t.refused_internal()),
        _ => None,
    }
}
