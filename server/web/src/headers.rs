//! Headers that every answer carries (OWASP ASVS 5.0, V3.4; CSP Level 3).

use actix_web::http::header::{self, HeaderName, HeaderValue};
use actix_web::middleware::DefaultHeaders;

/// No scripts but our own files, no frames, no guessing of types, no leaking of addresses.
pub const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; \
     connect-src 'self'; font-src 'self'; manifest-src 'self'; form-action 'self'; \
     base-uri 'none'; object-src 'none'; frame-ancestors 'none'";

/// The headers, none of which replaces one that a handler has set itself.
pub fn defaults() -> DefaultHeaders {
    DefaultHeaders::new()
        .add((
            header::CONTENT_SECURITY_POLICY,
            HeaderValue::from_static(POLICY),
        ))
        .add((
            header::X_CONTENT_TYPE_OPTIONS,
            HeaderValue::from_static("nosniff"),
        ))
        .add((
            header::REFERRER_POLICY,
            HeaderValue::from_static("same-origin"),
        ))
        .add((header::CACHE_CONTROL, HeaderValue::from_static("no-store")))
        .add((
            HeaderName::from_static("cross-origin-opener-policy"),
            HeaderValue::from_static("same-origin"),
        ))
        .add((
            HeaderName::from_static("cross-origin-resource-policy"),
            HeaderValue::from_static("same-origin"),
        ))
        .add((
            header::STRICT_TRANSPORT_SECURITY,
            HeaderValue::from_static("max-age=63072000; includeSubDomains"),
        ))
}
