//! `If-Match`: a change names the version that it changes (RFC 9110, section 13.1.1; RFC 6585 for 428).

use actix_web::HttpRequest;
use actix_web::http::header::IF_MATCH;
use app::{Reason, Refusal};
use messages::{Message, requests};

use crate::problem::{HttpFault, Problem};

/// The version named by `If-Match`.
///
/// # Errors
/// 428 without the header or a version in it; 400 when it is no ETag of ours.
pub fn required_if_match(request: &HttpRequest) -> Result<i64, Problem> {
    optional_if_match(request)?.ok_or_else(|| version_required(requests::if_match_needed()))
}

/// The version named by `If-Match`, where there is one.
///
/// # Errors
/// 428 for `*`: whichever version there is would match, and what somebody else changed be lost. 400 when it is
/// no ETag of ours.
pub fn optional_if_match(request: &HttpRequest) -> Result<Option<i64>, Problem> {
    let Some(header) = request.headers().get(IF_MATCH) else {
        return Ok(None);
    };
    let tag = header.to_str().ok().map(str::trim);
    if tag == Some("*") {
        return Err(version_required(requests::if_match_any()));
    }
    let number = tag.and_then(|tag| tag.strip_prefix('"')?.strip_suffix('"')?.parse().ok());
    number.map(Some).ok_or_else(|| {
        Problem::http(HttpFault::InvalidParameter).detail(requests::if_match_shape())
    })
}

fn version_required(message: Message) -> Problem {
    Refusal::rule(Reason::PreconditionRequired, message).into()
}
