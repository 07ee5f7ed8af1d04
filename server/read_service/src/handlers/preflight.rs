//! Handler: the CORS preflight (Fetch Standard). Pages of every site may read.

use actix_web::HttpResponse;
use actix_web::http::header::{
    ACCESS_CONTROL_ALLOW_HEADERS, ACCESS_CONTROL_ALLOW_METHODS, ACCESS_CONTROL_MAX_AGE, ALLOW,
};

use crate::http::response::allow_any_origin;

/// The methods of every address but event streams.
pub const READ_METHODS: &str = "GET, HEAD, OPTIONS";

/// Request headers that are not allowed by themselves.
const ALLOWED_HEADERS: &str = "accept, if-none-match, last-event-id";

/// A day; browsers keep it for less.
const MAX_AGE_SECONDS: &str = "86400";

/// Allows reading from every origin.
pub async fn preflight() -> HttpResponse {
    let mut response = HttpResponse::NoContent();
    response
        .insert_header((ALLOW, READ_METHODS))
        .insert_header((ACCESS_CONTROL_ALLOW_METHODS, READ_METHODS))
        .insert_header((ACCESS_CONTROL_ALLOW_HEADERS, ALLOWED_HEADERS))
        .insert_header((ACCESS_CONTROL_MAX_AGE, MAX_AGE_SECONDS));
    allow_any_origin(&mut response);
    response.finish()
}
