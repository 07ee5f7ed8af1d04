//! A body that is made for one request: what few ask for, or what no version of one season tells.

use actix_web::http::StatusCode;
use actix_web::http::header::{
    CACHE_CONTROL, CONTENT_ENCODING, CONTENT_SECURITY_POLICY, CONTENT_TYPE, ETAG, HeaderValue,
    IF_NONE_MATCH, VARY,
};
use actix_web::web::Bytes;
use actix_web::{HttpRequest, HttpResponse};
use sha2::{Digest, Sha256};

use crate::answer::{ASK_EACH_TIME, FRAMED, names, open_to_all_sites};
use crate::encoding::Encoding;
use crate::format::Format;

/// Digits of the body's digest within its tag: 64 bits.
const TAG_DIGITS: usize = 16;

/// 200 with the body, or 304 where the client has it. The tag tells no version.
pub fn answer_once(request: &HttpRequest, format: Format, body: Vec<u8>) -> HttpResponse {
    let encoding = Encoding::for_request(request);
    let mut digest = hex::encode(Sha256::digest(&body));
    digest.truncate(TAG_DIGITS);
    let tag = format!("\"{digest}{}\"", encoding.mark());
    let tag = HeaderValue::from_str(&tag).unwrap_or(HeaderValue::from_static("\"\""));
    let mut tags = request.headers().get_all(IF_NONE_MATCH);
    let unchanged = tags.any(|tags| names(tags, &tag));
    let mut response = HttpResponse::build(match unchanged {
        true => StatusCode::NOT_MODIFIED,
        false => StatusCode::OK,
    });
    response
        .insert_header((ETAG, tag))
        .insert_header((CACHE_CONTROL, ASK_EACH_TIME))
        .insert_header((VARY, HeaderValue::from_static("accept, accept-encoding")));
    open_to_all_sites(&mut response);
    if unchanged {
        return response.finish();
    }
    response.insert_header((CONTENT_TYPE, format.media_type()));
    if format == Format::Html {
        response.insert_header((CONTENT_SECURITY_POLICY, FRAMED));
    }
    if let Some(name) = encoding.name() {
        response.insert_header((CONTENT_ENCODING, name));
    }
    response.body(encoding.encode(&Bytes::from(body)))
}
