//! Middleware that renders every error, ours or the framework's, as a problem: JSON for programs, a page for
//! browsers.

use actix_web::body::{BoxBody, MessageBody};
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::error::ResponseError;
use actix_web::http::header::{
    ACCEPT_LANGUAGE, ACCESS_CONTROL_ALLOW_ORIGIN, ACCESS_CONTROL_EXPOSE_HEADERS, ALLOW,
    CONTENT_LANGUAGE, CONTENT_TYPE, RETRY_AFTER, VARY, WWW_AUTHENTICATE,
};
use actix_web::http::{ConnectionType, StatusCode};
use actix_web::middleware::Next;
use actix_web::{Error, HttpMessage, HttpRequest, HttpResponse};
use app::Refusal;
use messages::{Language, Texts};
use tracing_actix_web::RequestId;

use super::{FaultDocument, HttpFault, Problem, ProblemDocument};
use crate::pages;

impl ResponseError for Problem {
    fn status_code(&self) -> StatusCode {
        self.status()
    }
}

/// Middleware: renders an error as a problem with the request's path and id.
///
/// # Errors
/// None of its own.
pub async fn render(
    request: ServiceRequest,
    next: Next<impl MessageBody + 'static>,
) -> Result<ServiceResponse<BoxBody>, Error> {
    let response = next.call(request).await?;
    let Some(error) = response.response().error() else {
        return Ok(response.map_into_boxed_body());
    };
    let mut problem = error_response(response.request(), error);
    // On a connection that is kept, the rest of the body would be taken for the next request.
    if problem.status() == StatusCode::REQUEST_TIMEOUT {
        let head = problem.head_mut();
        head.set_connection_type(ConnectionType::Close);
    }
    // CORS: where other sites may read the resource, they may read its problems.
    for name in [ACCESS_CONTROL_ALLOW_ORIGIN, ACCESS_CONTROL_EXPOSE_HEADERS] {
        if let Some(value) = response.headers().get(&name) {
            problem.headers_mut().insert(name, value.clone());
        }
    }
    Ok(response.into_response(problem))
}

fn error_response(request: &HttpRequest, error: &Error) -> HttpResponse {
    match error.as_error::<Problem>() {
        Some(problem) => problem_response(request, problem),
        None => problem_response(request, &from_foreign_error(error)),
    }
}

/// The error of another crate: a refusal from the read service, or a status of the framework.
fn from_foreign_error(error: &Error) -> Problem {
    let response = error.as_response_error().error_response();
    if let Some(refusal) = response.extensions().get::<Refusal>() {
        return Problem::from(refusal.clone());
    }
    let fault = match response.status() {
        StatusCode::NOT_FOUND => HttpFault::NotFound,
        StatusCode::METHOD_NOT_ALLOWED => HttpFault::MethodNotAllowed,
        StatusCode::NOT_ACCEPTABLE => HttpFault::NotAcceptable,
        StatusCode::PAYLOAD_TOO_LARGE => HttpFault::PayloadTooLarge,
        StatusCode::SERVICE_UNAVAILABLE => HttpFault::Unavailable,
        status if status.is_client_error() => HttpFault::InvalidParameter,
        _ => {
            let mut problem = Problem::http(HttpFault::Internal);
            problem.cause = Some(error.to_string());
            return problem;
        }
    };
    let mut problem = Problem::http(fault);
    problem.allow = response.headers().get(ALLOW).cloned();
    if response.status().is_server_error() {
        problem.cause = Some(error.to_string());
    }
    problem
}

fn problem_response(request: &HttpRequest, problem: &Problem) -> HttpResponse {
    let request_id = request
        .extensions()
        .get::<RequestId>()
        .map_or_else(String::new, |id| id.to_string());
    match &problem.cause {
        Some(cause) if problem.kind.status == StatusCode::SERVICE_UNAVAILABLE => {
            tracing::warn!(code = problem.code(), cause, request_id, "unavailable");
        }
        Some(cause) => {
            tracing::error!(code = problem.code(), cause, request_id, "request failed");
        }
        None => {}
    }
    if pages::accepts_html(request)
        && let Some(page) = pages::error_page(request, problem, &request_id)
    {
        return page;
    }
    let t = Texts::of(accepted_language(request));
    let document = problem_document(request, request_id, problem, t);
    let mut response = HttpResponse::build(problem.kind.status);
    response
        .insert_header((CONTENT_TYPE, "application/problem+json"))
        .insert_header((CONTENT_LANGUAGE, t.language().code()))
        .insert_header((VARY, "accept-language"));
    if let Some(allow) = &problem.allow {
        response.insert_header((ALLOW, allow.clone()));
    }
    if let Some(seconds) = problem.retry_after {
        response.insert_header((RETRY_AFTER, seconds));
    }
    if problem.kind.status == StatusCode::UNAUTHORIZED {
        response.insert_header((WWW_AUTHENTICATE, "Bearer"));
    }
    match serde_json::to_vec(&document) {
        Ok(bytes) => response.body(bytes),
        Err(_) => response.finish(),
    }
}

fn problem_document(
    request: &HttpRequest,
    request_id: String,
    problem: &Problem,
    t: Texts,
) -> ProblemDocument {
    let faults = problem.faults.iter().map(|fault| FaultDocument {
        code: fault.code.clone(),
        pointer: fault.pointer.clone(),
        detail: t.say(&fault.message),
        limit: fault.limit.clone(),
        actual: fault.actual.clone(),
        row: fault.cell.map(|(row, _)| row),
        column: fault.cell.map(|(_, column)| column),
    });
    ProblemDocument {
        type_: problem.page(),
        title: t.say(&(problem.kind.title)()),
        status: problem.kind.status.as_u16(),
        detail: problem.detail.as_ref().map(|detail| t.say(detail)),
        instance: request.path().to_owned(),
        request_id,
        errors: faults.collect(),
        extensions: problem.extensions.clone(),
    }
}

/// The language that a program asks for; English unless it asks for one of ours.
fn accepted_language(request: &HttpRequest) -> Language {
    let header = request.headers().get(ACCEPT_LANGUAGE);
    let accepted = header.and_then(|value| Language::accepted(value.to_str().ok()?));
    accepted.unwrap_or(Language::English)
}
