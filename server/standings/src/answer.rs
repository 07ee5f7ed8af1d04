//! From a page to an answer: 200 with the body, or 304 without (RFC 9110, sections 13.1.2 and 15.4.5).

use actix_web::HttpResponseBuilder;
use actix_web::dev::Response;
use actix_web::http::StatusCode;
use actix_web::http::header::{
    ACCESS_CONTROL_ALLOW_ORIGIN, ACCESS_CONTROL_EXPOSE_HEADERS, CACHE_CONTROL, CONTENT_ENCODING,
    CONTENT_SECURITY_POLICY, CONTENT_TYPE, CROSS_ORIGIN_RESOURCE_POLICY, ETAG, HeaderMap,
    HeaderValue, IF_NONE_MATCH, LAST_MODIFIED, STRICT_TRANSPORT_SECURITY, VARY,
    X_CONTENT_TYPE_OPTIONS,
};
use actix_web::web::Bytes;

use crate::counts::Counts;
use crate::encoding::Encoding;
use crate::format::Format;
use crate::page::{Encoded, Page};

/// Anybody may keep it, and asks before each use whether it still holds: an unchanged body costs
/// nothing but the question, and no cache on the way can make it stale.
pub const ASK_EACH_TIME: HeaderValue = HeaderValue::from_static("public, no-cache");

/// A table that is framed by the pages of others; it loads nothing and runs nothing.
pub const FRAMED: HeaderValue =
    HeaderValue::from_static("default-src 'none'; style-src 'unsafe-inline'; frame-ancestors *");

/// Data, which is no page at all.
const NO_PAGE: HeaderValue = HeaderValue::from_static("default-src 'none'; frame-ancestors 'none'");

/// The answer with a page to a request with these headers. `If-Modified-Since` is not looked at: it
/// counts seconds, and two versions of one second would look alike.
pub fn answer(
    asked: &HeaderMap,
    page: &Page,
    encoding: Encoding,
    counts: &Counts,
) -> Response<Bytes> {
    let encoded = page.read(encoding, counts);
    let mut tags = asked.get_all(IF_NONE_MATCH);
    if tags.any(|tags| names(tags, &encoded.tag)) {
        return unchanged(encoded);
    }
    let mut response = Response::with_body(StatusCode::OK, encoded.bytes.clone());
    let headers = response.headers_mut();
    for_caches(headers, encoded);
    let media_type = HeaderValue::from_static(page.format.media_type());
    headers.insert(CONTENT_TYPE, media_type);
    if let Some(name) = encoding.name() {
        headers.insert(CONTENT_ENCODING, HeaderValue::from_static(name));
    }
    if let Some(changed) = &page.changed {
        headers.insert(LAST_MODIFIED, changed.clone());
    }
    headers.insert(ACCESS_CONTROL_EXPOSE_HEADERS, EXPOSED);
    headers.insert(CROSS_ORIGIN_RESOURCE_POLICY, CROSS_ORIGIN);
    let framed = page.format == Format::Html;
    headers.insert(
        CONTENT_SECURITY_POLICY,
        if framed { FRAMED } else { NO_PAGE },
    );
    headers.insert(X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    headers.insert(STRICT_TRANSPORT_SECURITY, ONLY_TLS);
    response
}

/// What a cache has to know. All else it has kept (RFC 9111, section 3.2).
fn unchanged(encoded: &Encoded) -> Response<Bytes> {
    let mut response = Response::with_body(StatusCode::NOT_MODIFIED, Bytes::new());
    for_caches(response.headers_mut(), encoded);
    response
}

fn for_caches(headers: &mut HeaderMap, encoded: &Encoded) {
    headers.insert(ETAG, encoded.tag.clone());
    headers.insert(CACHE_CONTROL, ASK_EACH_TIME);
    headers.insert(VARY, HeaderValue::from_static("accept, accept-encoding"));
    headers.insert(ACCESS_CONTROL_ALLOW_ORIGIN, EVERYBODY);
}

const EVERYBODY: HeaderValue = HeaderValue::from_static("*");
const EXPOSED: HeaderValue = HeaderValue::from_static("etag, link, retry-after");
const CROSS_ORIGIN: HeaderValue = HeaderValue::from_static("cross-origin");
const ONLY_TLS: HeaderValue = HeaderValue::from_static("max-age=63072000; includeSubDomains");

/// Pages of other sites may read it, too (Fetch Standard): it is for everybody.
pub fn open_to_all_sites(response: &mut HttpResponseBuilder) {
    response
        .insert_header((ACCESS_CONTROL_ALLOW_ORIGIN, EVERYBODY))
        .insert_header((ACCESS_CONTROL_EXPOSE_HEADERS, EXPOSED))
        .insert_header((CROSS_ORIGIN_RESOURCE_POLICY, CROSS_ORIGIN));
}

/// Whether `If-None-Match` names the tag. The comparison is weak: a proxy that compressed a body
/// itself has made its tag weak.
pub fn names(tags: &HeaderValue, tag: &HeaderValue) -> bool {
    let (Ok(tags), Ok(tag)) = (tags.to_str(), tag.to_str()) else {
        return false;
    };
    let mut tags = tags.split(',').map(str::trim);
    tags.any(|named| named == "*" || named.strip_prefix("W/").unwrap_or(named) == tag)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tag_is_found_in_a_list_and_when_it_was_made_weak() {
        let tag = HeaderValue::from_static("\"7.ab\"");
        for tags in ["\"7.ab\"", "\"6.cd\", \"7.ab\"", "W/\"7.ab\"", "*"] {
            assert!(names(&HeaderValue::from_static(tags), &tag), "{tags}");
        }
        for tags in ["\"7.ab-gzip\"", "7.ab", "\"7\"", ""] {
            assert!(!names(&HeaderValue::from_static(tags), &tag), "{tags}");
        }
    }
}
