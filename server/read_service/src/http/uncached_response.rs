//! A response whose body was rendered for one request: what few ask for, or what belongs to no version of one
//! season.

use actix_web::http::StatusCode;
use actix_web::http::header::{
    CACHE_CONTROL, CONTENT_ENCODING, CONTENT_SECURITY_POLICY, CONTENT_TYPE, ETAG, HeaderValue,
    IF_NONE_MATCH, VARY,
};
use actix_web::web::Bytes;
use actix_web::{HttpRequest, HttpResponse};
use sha2::{Digest, Sha256};

use crate::http::content_encoding::ContentEncoding;
use crate::http::format::Format;
use crate::http::response::{CSP_FRAMEABLE, REVALIDATE_ALWAYS, allow_any_origin, matches_tag};

/// Digits of the body's digest within its tag: 64 bits.
const TAG_DIGITS: usize = 16;

/// 200 with the body, or 304 where the client has it. Its tag is the digest of the body alone.
pub fn respond_uncached(request: &HttpRequest, format: Format, body: Vec<u8>) -> HttpResponse {
    let encoding = ContentEncoding::from_request(request);
    let mut digest = hex::encode(Sha256::digest(&body));
    digest.truncate(TAG_DIGITS);
    let tag = format!("\"{digest}{}\"", encoding.tag_suffix());
    let tag = HeaderValue::from_str(&tag).unwrap_or(HeaderValue::from_static("\"\""));
    let mut tags = request.headers().get_all(IF_NONE_MATCH);
    let is_unchanged = tags.any(|tags| matches_tag(tags, &tag));
    let mut response = HttpResponse::build(match is_unchanged {
        true => StatusCode::NOT_MODIFIED,
        false => StatusCode::OK,
    });
    response
        .insert_header((ETAG, tag))
        .insert_header((CACHE_CONTROL, REVALIDATE_ALWAYS))
        .insert_header((VARY, HeaderValue::from_static("accept, accept-encoding")));
    allow_any_origin(&mut response);
    if is_unchanged {
        return response.finish();
    }
    response.insert_header((CONTENT_TYPE, format.media_type()));
    if matches!(format, Format::Html(_)) {
        response.insert_header((CONTENT_SECURITY_POLICY, CSP_FRAMEABLE));
    }
    if let Some(name) = encoding.name() {
        response.insert_header((CONTENT_ENCODING, name));
    }
    response.body(encoding.encode(&Bytes::from(body)))
}
