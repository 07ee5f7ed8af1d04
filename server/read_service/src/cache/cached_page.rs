//! A cached page: one body of one version, encoded at most once in each content encoding.

use std::sync::OnceLock;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::SystemTime;

use actix_web::http::header::{HeaderValue, HttpDate, TryIntoHeaderValue};
use actix_web::web::Bytes;
use app::standings::Board;
use league::time::Instant;
use sha2::{Digest, Sha256};

use crate::cache::counters::CacheCounters;
use crate::http::content_encoding::ContentEncoding;
use crate::http::format::Format;

/// Digits of the body's digest within its tag: 64 bits.
const TAG_DIGITS: usize = 16;

/// What is served for one resource in one format.
#[derive(Debug)]
pub struct CachedPage {
    /// Version of the season that it shows.
    pub version: i64,
    /// When the clock alone changes what it shows, such as a reveal that is due.
    pub valid_until: Option<Instant>,
    pub format: Format,
    /// `Last-Modified`: when the version was made.
    pub last_modified: Option<HeaderValue>,
    /// In which encodings somebody has read it: a rebuild encodes these ahead.
    requested: [AtomicBool; ContentEncoding::ALL.len()],
    digest: String,
    identity: Bytes,
    encoded: [OnceLock<EncodedBody>; ContentEncoding::ALL.len()],
}

/// A body in one content encoding.
#[derive(Debug)]
pub struct EncodedBody {
    /// What is sent.
    pub bytes: Bytes,
    /// Its strong entity tag (RFC 9110, section 8.8.3): other bytes, other tag.
    pub tag: HeaderValue,
}

impl CachedPage {
    /// A page with this body, which was rendered from `board`.
    pub fn new(board: &Board, format: Format, body: Vec<u8>) -> Self {
        let mut digest = hex::encode(Sha256::digest(&body));
        digest.truncate(TAG_DIGITS);
        let last_modified = HttpDate::from(SystemTime::from(board.season.changed_at));
        Self {
            version: board.season.version,
            valid_until: board.holds_until,
            format,
            last_modified: last_modified.try_into_value().ok(),
            requested: Default::default(),
            digest,
            identity: body.into(),
            encoded: Default::default(),
        }
    }

    /// Whether somebody has read it since it was rendered.
    pub fn is_requested(&self) -> bool {
        let mut encodings = self.requested.iter();
        encodings.any(|requested| requested.load(Ordering::Relaxed))
    }

    /// Encodes it ahead in each encoding in which somebody has read `older`.
    pub fn encode_like(&self, older: &Self, counters: &CacheCounters) {
        for encoding in ContentEncoding::ALL {
            if older.requested[encoding as usize].load(Ordering::Relaxed) {
                self.encode(encoding, counters);
            }
        }
    }

    /// The body for a reader who takes this encoding.
    pub fn encoded_for(&self, encoding: ContentEncoding, counters: &CacheCounters) -> &EncodedBody {
        let requested = &self.requested[encoding as usize];
        // Checked before it is stored: a store would take the cache line from all other threads.
        if !requested.load(Ordering::Relaxed) {
            requested.store(true, Ordering::Relaxed);
        }
        self.encode(encoding, counters)
    }

    /// The body in this encoding, encoded now if it was not before.
    fn encode(&self, encoding: ContentEncoding, counters: &CacheCounters) -> &EncodedBody {
        self.encoded[encoding as usize].get_or_init(|| {
            counters.encodes.add_one();
            let tag = format!(
                "\"{}.{}{}\"",
                self.version,
                self.digest,
                encoding.tag_suffix()
            );
            EncodedBody {
                bytes: encoding.encode(&self.identity),
                tag: HeaderValue::from_str(&tag).unwrap_or(HeaderValue::from_static("\"\"")),
            }
        })
    }
}
