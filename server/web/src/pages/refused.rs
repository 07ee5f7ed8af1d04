//! A refusal as a page.

use actix_web::http::header::ACCEPT;
use actix_web::http::{Method, StatusCode};
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;

use super::answer::{framed, go, percent_encode, show_as};
use super::texts::speech::Said;
use super::texts::{Phrase, Texts};
use super::visit::{Frame, Visit};
use crate::problem::ProblemDocument;

#[derive(Template)]
#[template(path = "refused.html")]
struct RefusedPage<'a> {
    frame: Frame,
    t: &'static Texts,
    words: Option<Phrase>,
    detail: Said,
    faults: Vec<Said>,
    /// Whether a form was sent: what was typed is still on the page before.
    sent: bool,
    /// Whether signing in would help.
    signed_out: bool,
    /// The page that explains this kind of refusal.
    kind: &'a str,
    request_id: &'a str,
}
framed!(RefusedPage<'_>);

/// Whether whoever asks is a person before a browser.
pub fn reads_pages(request: &HttpRequest) -> bool {
    let accept = request.headers().get(ACCEPT);
    let html = accept
        .and_then(|value| value.to_str().ok())
        .is_some_and(|value| value.contains("text/html"));
    html && !request.path().starts_with("/api/")
}

/// The page that tells of a problem; to somebody who must sign in, the way there.
pub fn refused(
    request: &HttpRequest,
    status: StatusCode,
    problem: &ProblemDocument,
) -> Option<HttpResponse> {
    if status == StatusCode::UNAUTHORIZED && request.method() == Method::GET {
        let next = request.uri().to_string();
        let next = percent_encode(&next);
        return Some(go(&format!("/sign-in?next={next}")));
    }
    let visit = Visit::unknown(request);
    let said = |english: &str| Said::detail(visit.t.speech(), english);
    let page = RefusedPage {
        frame: visit.frame(),
        t: visit.t,
        words: words(visit.t, status, problem),
        detail: said(problem.detail.as_deref().unwrap_or(problem.title)),
        faults: problem
            .errors
            .iter()
            .map(|fault| said(&fault.detail))
            .collect(),
        sent: request.method() == Method::POST,
        signed_out: status == StatusCode::UNAUTHORIZED,
        kind: problem.type_.as_ref(),
        request_id: &problem.request_id,
    };
    show_as(status, &page).ok()
}

fn words(t: &Texts, status: StatusCode, problem: &ProblemDocument) -> Option<Phrase> {
    match status {
        _ if problem.type_ == "/problems/csrf" => Some(t.refused_csrf),
        StatusCode::NOT_FOUND => Some(t.refused_not_found),
        StatusCode::SERVICE_UNAVAILABLE => Some(t.refused_unavailable),
        StatusCode::INTERNAL_SERVER_ERROR => Some(t.refused_internal),
        _ => None,
    }
}
