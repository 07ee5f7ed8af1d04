//! The tracing span of a request: what a log line says about it.

use actix_web::body::MessageBody;
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::{Error, HttpMessage};
use tracing::Span;
use tracing_actix_web::{RequestId, RootSpanBuilder};

/// Holds the request's id, method and route. Neither address nor browser nor anything the client typed: a log
/// holds no personal data.
///
/// Reads from the cache are spanned at debug level: they are many and alike, and spans at info level would cost
/// about a seventh of the throughput.
pub struct RequestSpan;

/// Prefix of the paths of the read service.
const PUBLIC_PREFIX: &str = "/public/";

impl RootSpanBuilder for RequestSpan {
    fn on_request_start(request: &ServiceRequest) -> Span {
        if request.path().starts_with(PUBLIC_PREFIX) {
            return tracing::debug_span!("read", path = request.path());
        }
        let request_id = request.extensions().get::<RequestId>().copied();
        let route = request.match_pattern();
        tracing::info_span!(
            "request",
            request_id = request_id.map(tracing::field::display),
            method = request.method().as_str(),
            route = route.as_deref().unwrap_or("none"),
        )
    }

    fn on_request_end<B: MessageBody>(span: Span, outcome: &Result<ServiceResponse<B>, Error>) {
        let status = match outcome {
            Ok(response) => response.status(),
            Err(error) => error.as_response_error().status_code(),
        };
        tracing::debug!(parent: span, status = status.as_u16(), "answered");
    }
}
