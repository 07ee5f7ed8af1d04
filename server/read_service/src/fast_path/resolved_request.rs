//! What a request resolved to once it was routed: a page of a season, in an encoding.

use std::sync::{Arc, Weak};

use actix_web::HttpRequest;
use actix_web::dev::Response;
use actix_web::http::header::HeaderMap;
use actix_web::web::Bytes;

use crate::cache::page_cache::PageCache;
use crate::cache::season_entry::SeasonEntry;
use crate::http::client_version::tagged_version;
use crate::http::content_encoding::ContentEncoding;
use crate::http::response::respond;
use crate::resources::PageKey;

/// The page that a request asks for, whatever its version. The same bytes always ask for the same.
#[derive(Clone)]
pub(crate) struct ResolvedRequest {
    pub cache: Arc<PageCache>,
    /// Weak: clients that follow a season learn of its eviction when the last entry is dropped.
    entry: Weak<SeasonEntry>,
    page_key: PageKey,
    pub encoding: ContentEncoding,
    /// The pattern of its route, for the metrics.
    pub route: String,
}

impl ResolvedRequest {
    pub fn new(
        cache: Arc<PageCache>,
        entry: &Arc<SeasonEntry>,
        page_key: PageKey,
        request: &HttpRequest,
    ) -> Self {
        Self {
            cache,
            entry: Arc::downgrade(entry),
            page_key,
            encoding: ContentEncoding::from_request(request),
            route: request.match_pattern().unwrap_or_default(),
        }
    }

    /// The response at this moment to a request with these headers, if nothing has to be rendered or queried
    /// for it.
    pub fn respond(&self, headers: &HeaderMap) -> Option<Response<Bytes>> {
        let entry = self.entry.upgrade()?;
        let page = self.cache.cached_page(&entry, self.page_key)?;
        if tagged_version(headers).is_some_and(|version| page.version < version) {
            // The client has read a newer version from another process.
            return None;
        }
        let mut response = respond(headers, &page, self.encoding, self.cache.counters());
        self.cache.add_age_header(response.headers_mut());
        Some(response)
    }
}
