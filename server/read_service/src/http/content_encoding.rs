//! Content codings (RFC 9110, section 8.4.1; RFC 7932 for brotli).

use std::io::{self, Write};

use actix_web::HttpRequest;
use actix_web::http::header::{ACCEPT_ENCODING, AcceptEncoding, Encoding as Name, Header};
use actix_web::web::Bytes;
use brotli::CompressorWriter;
use flate2::Compression;
use flate2::write::GzEncoder;

/// Within 3 % of the smallest on a table of 64 rows, in a tenth of the time.
const BROTLI_QUALITY: u32 = 6;
const BROTLI_WINDOW: u32 = 20;
const BUFFER: usize = 4096;

/// A content encoding that the service has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ContentEncoding {
    Identity,
    Gzip,
    Brotli,
}

impl ContentEncoding {
    /// All of them, each at the index of its discriminant.
    pub const ALL: [Self; 3] = [Self::Identity, Self::Gzip, Self::Brotli];

    /// The smallest that `Accept-Encoding` allows; identity without the header.
    pub fn from_request(request: &HttpRequest) -> Self {
        if !request.headers().contains_key(ACCEPT_ENCODING) {
            return Self::Identity;
        }
        let Ok(accepted) = AcceptEncoding::parse(request) else {
            return Self::Identity;
        };
        let ours = [Name::brotli(), Name::gzip(), Name::identity()];
        match accepted.negotiate(ours.iter()) {
            Some(chosen) if chosen == Name::brotli() => Self::Brotli,
            Some(chosen) if chosen == Name::gzip() => Self::Gzip,
            _ => Self::Identity,
        }
    }

    /// The value of `Content-Encoding`.
    pub fn name(self) -> Option<&'static str> {
        match self {
            Self::Identity => None,
            Self::Gzip => Some("gzip"),
            Self::Brotli => Some("br"),
        }
    }

    /// What ends the entity tag: each encoding of a body has its own.
    pub fn tag_suffix(self) -> &'static str {
        match self {
            Self::Identity => "",
            Self::Gzip => "-gzip",
            Self::Brotli => "-br",
        }
    }

    /// The body in this encoding.
    pub fn encode(self, body: &Bytes) -> Bytes {
        match self {
            Self::Identity => body.clone(),
            Self::Gzip => in_memory(gzip(body)),
            Self::Brotli => in_memory(brotli(body)),
        }
    }
}

/// Writing to memory does not fail.
fn in_memory(written: io::Result<Vec<u8>>) -> Bytes {
    written.unwrap_or_default().into()
}

fn gzip(body: &[u8]) -> io::Result<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::default());
    encoder.write_all(body)?;
    encoder.finish()
}

fn brotli(body: &[u8]) -> io::Result<Vec<u8>> {
    let mut encoder = CompressorWriter::new(Vec::new(), BUFFER, BROTLI_QUALITY, BROTLI_WINDOW);
    encoder.write_all(body)?;
    encoder.flush()?;
    Ok(encoder.into_inner())
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use super::*;

    #[test]
    fn what_was_encoded_can_be_read_again() {
        let body = Bytes::from("rank,player\r\n1,Wennable\r\n".repeat(40));
        let mut gzip = Vec::new();
        flate2::read::GzDecoder::new(&ContentEncoding::Gzip.encode(&body)[..])
            .read_to_end(&mut gzip)
            .unwrap();
        let mut brotli = Vec::new();
        brotli::Decompressor::new(&ContentEncoding::Brotli.encode(&body)[..], BUFFER)
            .read_to_end(&mut brotli)
            .unwrap();
        assert_eq!([gzip, brotli], [body.to_vec(), body.to_vec()]);
    }

    #[test]
    fn every_encoding_stands_at_its_index() {
        for (index, encoding) in ContentEncoding::ALL.into_iter().enumerate() {
            assert_eq!(encoding as usize, index);
        }
    }
}
