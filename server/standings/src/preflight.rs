//! What a browser asks before a page of another site may read (Fetch Standard, CORS-preflight fetch).

use actix_web::HttpResponse;
use actix_web::http::header::{
    ACCESS_CONTROL_ALLOW_HEADERS, ACCESS_CONTROL_ALLOW_METHODS, ACCESS_CONTROL_MAX_AGE, ALLOW,
};

use crate::answer::open_to_all_sites;

/// The methods of everything that is read.
pub const METHODS: &str = "GET, HEAD, OPTIONS";

/// What a reader may send besides the headers that need no leave.
const HEADERS: &str = "accept, if-none-match, last-event-id";

/// A day; browsers keep it for less.
const SECONDS: &str = "86400";

/// Everybody may read from everywhere.
pub async fn allow_reading() -> HttpResponse {
    let mut response = HttpResponse::NoContent();
    response
        .insert_header((ALLOW, METHODS))
        .insert_header((ACCESS_CONTROL_ALLOW_METHODS, METHODS))
        .insert_header((ACCESS_CONTROL_ALLOW_HEADERS, HEADERS))
        .insert_header((ACCESS_CONTROL_MAX_AGE, SECONDS));
    open_to_all_sites(&mut response);
    response.finish()
}
