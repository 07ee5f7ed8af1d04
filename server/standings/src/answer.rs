//! From a page to an answer: 200 with the body, or 304 without (RFC 9110, sections 13.1.2 and 15.4.5).

use actix_web::http::StatusCode;
use actix_web::http::header::{
    ACCESS_CONTROL_ALLOW_ORIGIN, ACCESS_CONTROL_EXPOSE_HEADERS, CACHE_CONTROL, CONTENT_ENCODING,
    CONTENT_SECURITY_POLICY, CONTENT_TYPE, ETAG, HeaderName, HeaderValue, IF_NONE_MATCH,
    LAST_MODIFIED, VARY,
};
use actix_web::{HttpRequest, HttpResponse, HttpResponseBuilder};

use crate::counts::Counts;
use crate::encoding::Encoding;
use crate::format::Format;
use crate::page::Page;

/// Anybody may keep it, and asks before each use whether it still holds: an unchanged body costs
/// nothing but the question, and no cache on the way can make it stale.
const ASK_EACH_TIME: HeaderValue = HeaderValue::from_static("public, no-cache");

/// A table that is framed by the pages of others; it loads nothing and runs nothing.
const FRAMED: HeaderValue =
    HeaderValue::from_static("default-src 'none'; style-src 'unsafe-inline'; frame-ancestors *");

/// The answer to a request for a page. `If-Modified-Since` is not looked at: it counts seconds, and
/// two versions of one second would look alike.
pub fn answer(request: &HttpRequest, page: &Page, counts: &Counts) -> HttpResponse {
    let encoding = Encoding::for_request(request);
    let encoded = page.encoded(encoding, counts);
    let unchanged = request
        .headers()
        .get_all(IF_NONE_MATCH)
        .any(|tags| names(tags, &encoded.tag));
    let status = if unchanged {
        StatusCode::NOT_MODIFIED
    } else {
        StatusCode::OK
    };
    let mut response = HttpResponse::build(status);
    response
        .insert_header((ETAG, encoded.tag.clone()))
        .insert_header((CACHE_CONTROL, ASK_EACH_TIME))
        .insert_header((VARY, HeaderValue::from_static("accept, accept-encoding")));
    if let Some(changed) = &page.changed {
        response.insert_header((LAST_MODIFIED, changed.clone()));
    }
    open_to_all_sites(&mut response);
    if unchanged {
        return response.finish();
    }
    let media_type = HeaderValue::from_static(page.format.media_type());
    response.insert_header((CONTENT_TYPE, media_type));
    if page.format == Format::Html {
        response.insert_header((CONTENT_SECURITY_POLICY, FRAMED));
    }
    if let Some(name) = encoding.name() {
        response.insert_header((CONTENT_ENCODING, HeaderValue::from_static(name)));
    }
    response.body(encoded.bytes.clone())
}

/// Pages of other sites may read it, too (Fetch Standard): it is for everybody.
pub fn open_to_all_sites(response: &mut HttpResponseBuilder) {
    response
        .insert_header((ACCESS_CONTROL_ALLOW_ORIGIN, HeaderValue::from_static("*")))
        .insert_header((
            ACCESS_CONTROL_EXPOSE_HEADERS,
            HeaderValue::from_static("etag"),
        ))
        .insert_header((
            HeaderName::from_static("cross-origin-resource-policy"),
            HeaderValue::from_static("cross-origin"),
        ));
}

/// Whether `If-None-Match` names the tag. The comparison is weak: a proxy that compressed a body
/// itself has made its tag weak.
fn names(tags: &HeaderValue, tag: &HeaderValue) -> bool {
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
