//! From a cached page to a response: 200 with the body, or 304 (RFC 9110, sections 13.1.2 and 15.4.5).

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

use crate::cache::cached_page::{CachedPage, EncodedBody};
use crate::cache::counters::CacheCounters;
use crate::http::content_encoding::ContentEncoding;
use crate::http::format::Format;

/// Every cache may store it, and revalidates before each use: an unchanged body costs one 304, and no cache on
/// the way can make it stale.
pub const REVALIDATE_ALWAYS: HeaderValue = HeaderValue::from_static("public, no-cache");

/// For a table that other sites frame: it loads nothing and runs nothing.
pub const CSP_FRAMEABLE: HeaderValue =
    HeaderValue::from_static("default-src 'none'; style-src 'unsafe-inline'; frame-ancestors *");

/// For data, which is no page.
const CSP_DATA: HeaderValue =
    HeaderValue::from_static("default-src 'none'; frame-ancestors 'none'");

/// The response with a page to a request with these headers. `If-Modified-Since` is ignored: it counts
/// seconds, and two versions of one second would look alike.
pub fn respond(
    request_headers: &HeaderMap,
    page: &CachedPage,
    encoding: ContentEncoding,
    counters: &CacheCounters,
) -> Response<Bytes> {
    let encoded = page.encoded_for(encoding, counters);
    let mut tags = request_headers.get_all(IF_NONE_MATCH);
    if tags.any(|tags| matches_tag(tags, &encoded.tag)) {
        return not_modified(encoded);
    }
    let mut response = Response::with_body(StatusCode::OK, encoded.bytes.clone());
    let headers = response.headers_mut();
    set_cache_headers(headers, encoded);
    let media_type = HeaderValue::from_static(page.format.media_type());
    headers.insert(CONTENT_TYPE, media_type);
    if let Some(name) = encoding.name() {
        headers.insert(CONTENT_ENCODING, HeaderValue::from_static(name));
    }
    if let Some(last_modified) = &page.last_modified {
        headers.insert(LAST_MODIFIED, last_modified.clone());
    }
    headers.insert(ACCESS_CONTROL_EXPOSE_HEADERS, EXPOSED_HEADERS);
    headers.insert(CROSS_ORIGIN_RESOURCE_POLICY, CROSS_ORIGIN);
    let is_frameable = matches!(page.format, Format::Html(_));
    headers.insert(
        CONTENT_SECURITY_POLICY,
        if is_frameable {
            CSP_FRAMEABLE
        } else {
            CSP_DATA
        },
    );
    headers.insert(X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    headers.insert(STRICT_TRANSPORT_SECURITY, HSTS);
    response
}

/// 304 repeats only what a cache needs to revalidate; it has stored the rest (RFC 9111, section 3.2).
fn not_modified(encoded: &EncodedBody) -> Response<Bytes> {
    let mut response = Response::with_body(StatusCode::NOT_MODIFIED, Bytes::new());
    set_cache_headers(response.headers_mut(), encoded);
    response
}

fn set_cache_headers(headers: &mut HeaderMap, encoded: &EncodedBody) {
    headers.insert(ETAG, encoded.tag.clone());
    headers.insert(CACHE_CONTROL, REVALIDATE_ALWAYS);
    headers.insert(VARY, HeaderValue::from_static("accept, accept-encoding"));
    headers.insert(ACCESS_CONTROL_ALLOW_ORIGIN, ANY_ORIGIN);
}

const ANY_ORIGIN: HeaderValue = HeaderValue::from_static("*");
const EXPOSED_HEADERS: HeaderValue = HeaderValue::from_static("etag, link, retry-after");
const CROSS_ORIGIN: HeaderValue = HeaderValue::from_static("cross-origin");
const HSTS: HeaderValue = HeaderValue::from_static("max-age=63072000; includeSubDomains");

/// CORS (Fetch Standard): pages of every site may read it.
pub fn allow_any_origin(response: &mut HttpResponseBuilder) {
    response
        .insert_header((ACCESS_CONTROL_ALLOW_ORIGIN, ANY_ORIGIN))
        .insert_header((ACCESS_CONTROL_EXPOSE_HEADERS, EXPOSED_HEADERS))
        .insert_header((CROSS_ORIGIN_RESOURCE_POLICY, CROSS_ORIGIN));
}

/// Whether `If-None-Match` holds the tag. The comparison is weak: a proxy that compressed a body itself has
/// made its tag weak.
pub fn matches_tag(tags: &HeaderValue, tag: &HeaderValue) -> bool {
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
            assert!(matches_tag(&HeaderValue::from_static(tags), &tag), "{tags}");
        }
        for tags in ["\"7.ab-gzip\"", "7.ab", "\"7\"", ""] {
            assert!(
                !matches_tag(&HeaderValue::from_static(tags), &tag),
                "{tags}"
            );
        }
    }
}
