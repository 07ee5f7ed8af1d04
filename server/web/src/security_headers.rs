//! Security headers of every response (OWASP ASVS 5.0, V3.4; CSP Level 3).

use actix_web::Error;
use actix_web::body::MessageBody;
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::http::StatusCode;
use actix_web::http::header::{
    CACHE_CONTROL, CONTENT_SECURITY_POLICY, CROSS_ORIGIN_OPENER_POLICY,
    CROSS_ORIGIN_RESOURCE_POLICY, HeaderName, HeaderValue, REFERRER_POLICY,
    STRICT_TRANSPORT_SECURITY, X_CONTENT_TYPE_OPTIONS,
};
use actix_web::middleware::Next;

/// No scripts but our own files, no frames, no guessing of types, no leaking of addresses.
pub const CSP: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; \
     connect-src 'self'; font-src 'self'; manifest-src 'self'; form-action 'self'; \
     base-uri 'none'; object-src 'none'; frame-ancestors 'none'";

const SECURITY_HEADERS: [(HeaderName, &str); 7] = [
    (CONTENT_SECURITY_POLICY, CSP),
    (X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (REFERRER_POLICY, "same-origin"),
    (CACHE_CONTROL, "no-store"),
    (CROSS_ORIGIN_OPENER_POLICY, "same-origin"),
    (CROSS_ORIGIN_RESOURCE_POLICY, "same-origin"),
    (
        STRICT_TRANSPORT_SECURITY,
        "max-age=63072000; includeSubDomains",
    ),
];

/// Middleware: adds those that the response does not set itself. A response with `X-Content-Type-Options` has set
/// all of its headers, and a 304 repeats none: the stored response has them (RFC 9111, section 3.2).
///
/// # Errors
/// None of its own.
pub async fn add_security_headers<B: MessageBody>(
    request: ServiceRequest,
    next: Next<B>,
) -> Result<ServiceResponse<B>, Error> {
    let mut response = next.call(request).await?;
    let is_complete = response.headers().contains_key(X_CONTENT_TYPE_OPTIONS)
        || response.status() == StatusCode::NOT_MODIFIED;
    if !is_complete {
        for (name, value) in SECURITY_HEADERS {
            if !response.headers().contains_key(&name) {
                let value = HeaderValue::from_static(value);
                response.headers_mut().insert(name, value);
            }
        }
    }
    Ok(response)
}
