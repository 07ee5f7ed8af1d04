//! A page: one body of one version, encoded at most once each way.

use std::sync::OnceLock;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::SystemTime;

use actix_web::http::header::{HeaderValue, HttpDate, TryIntoHeaderValue};
use actix_web::web::Bytes;
use app::standings::Board;
use league::time::Instant;
use sha2::{Digest, Sha256};

use crate::counts::Counts;
use crate::encoding::Encoding;
use crate::format::Format;

/// Digits of the body's digest within its tag: 64 bits.
const TAG_DIGITS: usize = 16;

/// What is served for one resource in one format.
#[derive(Debug)]
pub struct Page {
    /// The season's version that it belongs to.
    pub version: i64,
    /// When the clock alone would change it.
    pub holds_until: Option<Instant>,
    /// How it is written.
    pub format: Format,
    /// When the season's version rose, as `Last-Modified`.
    pub changed: Option<HeaderValue>,
    /// In which encodings somebody has read it.
    read: [AtomicBool; Encoding::ALL.len()],
    digest: String,
    identity: Bytes,
    encoded: [OnceLock<Encoded>; Encoding::ALL.len()],
}

/// A body as it goes over the wire.
#[derive(Debug)]
pub struct Encoded {
    /// Its bytes.
    pub bytes: Bytes,
    /// Its strong entity tag (RFC 9110, section 8.8.3): other bytes, other tag.
    pub tag: HeaderValue,
}

impl Page {
    /// A body made from a board.
    pub fn new(board: &Board, format: Format, body: Vec<u8>) -> Self {
        let mut digest = hex::encode(Sha256::digest(&body));
        digest.truncate(TAG_DIGITS);
        let changed = HttpDate::from(SystemTime::from(board.season.changed_at));
        Self {
            version: board.season.version,
            holds_until: board.holds_until,
            format,
            changed: changed.try_into_value().ok(),
            read: Default::default(),
            digest,
            identity: body.into(),
            encoded: Default::default(),
        }
    }

    /// Whether somebody has read it since it was made.
    pub fn is_read(&self) -> bool {
        let mut ways = self.read.iter();
        ways.any(|read| read.load(Ordering::Relaxed))
    }

    /// Encodes it in each way in which somebody has read an older page.
    pub fn encode_as(&self, older: &Self, counts: &Counts) {
        for encoding in Encoding::ALL {
            if older.read[encoding as usize].load(Ordering::Relaxed) {
                self.encode(encoding, counts);
            }
        }
    }

    /// The body for somebody who reads it in this encoding.
    pub fn read(&self, encoding: Encoding, counts: &Counts) -> &Encoded {
        let read = &self.read[encoding as usize];
        if !read.load(Ordering::Relaxed) {
            read.store(true, Ordering::Relaxed);
        }
        self.encode(encoding, counts)
    }

    /// The body in this encoding, made now if it was not before.
    fn encode(&self, encoding: Encoding, counts: &Counts) -> &Encoded {
        self.encoded[encoding as usize].get_or_init(|| {
            counts.encodes.add_one();
            let tag = format!("\"{}.{}{}\"", self.version, self.digest, encoding.mark());
            Encoded {
                bytes: encoding.encode(&self.identity),
                tag: HeaderValue::from_str(&tag).unwrap_or(HeaderValue::from_static("\"\"")),
            }
        })
    }
}
