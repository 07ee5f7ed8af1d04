//! From a refusal, ours or the framework's, to the bytes on the wire.

use actix_web::body::{BoxBody, MessageBody};
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::error::ResponseError;
use actix_web::http::header::{
    ACCESS_CONTROL_ALLOW_ORIGIN, ACCESS_CONTROL_EXPOSE_HEADERS, ALLOW, CONTENT_TYPE, RETRY_AFTER,
    WWW_AUTHENTICATE,
};
use actix_web::http::{ConnectionType, StatusCode};
use actix_web::middleware::Next;
use actix_web::{Error, HttpMessage, HttpRequest, HttpResponse};
use app::Refusal;
use tracing_actix_web::RequestId;

use super::{FaultDocument, Problem, ProblemDocument, WireFault};
use crate::pages;

impl ResponseError for Problem {
    fn status_code(&self) -> StatusCode {
        self.status()
    }
}

/// Middleware: whatever went wrong leaves as a problem with the request's path and id.
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
    let mut problem = answer(response.request(), error);
    // The rest of the body would be taken for the next request.
    if problem.status() == StatusCode::REQUEST_TIMEOUT {
        let head = problem.head_mut();
        head.set_connection_type(ConnectionType::Close);
    }
    // What everybody may read of other sites, everybody may be refused there.
    for name in [ACCESS_CONTROL_ALLOW_ORIGIN, ACCESS_CONTROL_EXPOSE_HEADERS] {
        if let Some(value) = response.headers().get(&name) {
            problem.headers_mut().insert(name, value.clone());
        }
    }
    Ok(response.into_response(problem))
}

fn answer(request: &HttpRequest, error: &Error) -> HttpResponse {
    match error.as_error::<Problem>() {
        Some(problem) => write(request, problem),
        None => write(request, &foreign(error)),
    }
}

/// A problem told by another crate: a refusal of the league, or a status of the framework.
fn foreign(error: &Error) -> Problem {
    let said = error.as_response_error().error_response();
    if let Some(refusal) = said.extensions().get::<Refusal>() {
        return Problem::from(refusal.clone());
    }
    let fault = match said.status() {
        StatusCode::NOT_FOUND => WireFault::NotFound,
        StatusCode::METHOD_NOT_ALLOWED => WireFault::MethodNotAllowed,
        StatusCode::NOT_ACCEPTABLE => WireFault::NotAcceptable,
        StatusCode::PAYLOAD_TOO_LARGE => WireFault::PayloadTooLarge,
        StatusCode::SERVICE_UNAVAILABLE => WireFault::Unavailable,
        status if status.is_client_error() => WireFault::InvalidParameter,
        _ => {
            let mut problem = Problem::wire(WireFault::Internal);
            problem.cause = Some(error.to_string());
            return problem;
        }
    };
    let mut problem = Problem::wire(fault);
    problem.allow = said.headers().get(ALLOW).cloned();
    if said.status().is_server_error() {
        problem.cause = Some(error.to_string());
    }
    problem
}

fn write(request: &HttpRequest, problem: &Problem) -> HttpResponse {
    let request_id = request
        .extensions()
        .get::<RequestId>()
        .map_or_else(String::new, |id| id.to_string());
    match &problem.cause {
        Some(cause) if problem.kind.status == StatusCode::SERVICE_UNAVAILABLE => {
            tracing::warn!(code = problem.code(), cause, request_id, "not now");
        }
        Some(cause) => {
            tracing::error!(code = problem.code(), cause, request_id, "request failed");
        }
        None => {}
    }
    let document = ProblemDocument {
        type_: format!("/problems/{}", problem.kind.code),
        title: problem.kind.title,
        status: problem.kind.status.as_u16(),
        detail: problem.detail.clone(),
        instance: request.path().to_owned(),
        request_id,
        errors: problem
            .faults
            .iter()
            .map(|fault| FaultDocument {
                code: fault.code.clone(),
                pointer: fault.pointer.clone(),
                detail: fault.detail.clone(),
                limit: fault.limit.clone(),
                actual: fault.actual.clone(),
                row: fault.cell.map(|(row, _)| row),
                column: fault.cell.map(|(_, column)| column),
            })
            .collect(),
        facts: problem.facts.clone(),
    };
    if pages::reads_pages(request)
        && let Some(page) = pages::refused(request, problem.kind.status, &document)
    {
        return page;
    }
    let mut response = HttpResponse::build(problem.kind.status);
    response.insert_header((CONTENT_TYPE, "application/problem+json"));
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
