//! What a request turned out to ask for. Whoever sends the same bytes again asks for the same.

use std::sync::{Arc, Weak};

use actix_web::HttpRequest;
use actix_web::dev::Response;
use actix_web::http::header::HeaderMap;
use actix_web::web::Bytes;

use crate::answer::answer;
use crate::encoding::Encoding;
use crate::kept::Kept;
use crate::resource::Wanted;
use crate::seen::seen;
use crate::shelf::Shelf;

/// A page in an encoding, whatever its version.
#[derive(Clone)]
pub(crate) struct Asked {
    pub shelf: Arc<Shelf>,
    /// Weak: those who follow a season are told of its end by the end of its place.
    kept: Weak<Kept>,
    wanted: Wanted,
    pub encoding: Encoding,
    /// The pattern of its address, for the numbers.
    pub route: String,
}

impl Asked {
    pub fn new(shelf: Arc<Shelf>, kept: &Arc<Kept>, wanted: Wanted, request: &HttpRequest) -> Self {
        Self {
            shelf,
            kept: Arc::downgrade(kept),
            wanted,
            encoding: Encoding::for_request(request),
            route: request.match_pattern().unwrap_or_default(),
        }
    }

    /// The answer of this moment to a request with these headers, where nothing has to be made or
    /// confirmed for it.
    pub fn answer(&self, headers: &HeaderMap) -> Option<Response<Bytes>> {
        let kept = self.kept.upgrade()?;
        let page = self.shelf.page_at_once(&kept, self.wanted)?;
        if seen(headers, None).is_some_and(|version| page.version < version) {
            // The reader comes from a process that knows more.
            return None;
        }
        let mut answer = answer(headers, &page, self.encoding, self.shelf.counts());
        self.shelf.tell_age(answer.headers_mut());
        Some(answer)
    }
}
