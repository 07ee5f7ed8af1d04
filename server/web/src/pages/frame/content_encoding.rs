//! Content encodings of pages (RFC 9110, section 8.4.1; RFC 7932 for brotli).
//!
//! A page may carry a secret beside what a stranger wrote, whose length compression would tell:
//! the token of its forms. `csrf` draws that anew for every answer, so that there is nothing to learn.

use std::io::Write;

use actix_web::HttpRequest;
use actix_web::http::header::{ACCEPT_ENCODING, AcceptEncoding, Encoding, Header};
use brotli::enc::BrotliEncoderParams;
use flate2::Compression;
use flate2::write::GzEncoder;

/// Within a few percent of the smallest, in a fraction of the time.
const BROTLI_QUALITY: i32 = 5;

/// A content encoding of pages; `None` in its place means identity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ContentEncoding {
    /// What every browser reads.
    Gzip,
    /// The smaller one, which browsers accept over TLS only.
    Brotli,
}

impl ContentEncoding {
    /// The smallest that `Accept-Encoding` allows.
    pub fn from_request(request: &HttpRequest) -> Option<Self> {
        if !request.headers().contains_key(ACCEPT_ENCODING) {
            return None;
        }
        let accepted = AcceptEncoding::parse(request).ok()?;
        let ours = [
            (Encoding::brotli(), Some(Self::Brotli)),
            (Encoding::gzip(), Some(Self::Gzip)),
            (Encoding::identity(), None),
        ];
        let chosen = accepted.negotiate(ours.iter().map(|(name, _)| name))?;
        let found = ours.into_iter().find(|(name, _)| *name == chosen);
        found.and_then(|(_, encoding)| encoding)
    }

    /// The value of `Content-Encoding`.
    pub fn name(self) -> &'static str {
        match self {
            Self::Gzip => "gzip",
            Self::Brotli => "br",
        }
    }

    /// The text in this encoding; `None` when it could not be written.
    pub fn encode(self, mut text: &[u8]) -> Option<Vec<u8>> {
        let mut encoded = Vec::new();
        match self {
            Self::Gzip => {
                let mut writer = GzEncoder::new(&mut encoded, Compression::default());
                writer.write_all(text).ok()?;
                writer.finish().ok()?;
            }
            Self::Brotli => {
                let parameters = BrotliEncoderParams {
                    quality: BROTLI_QUALITY,
                    ..BrotliEncoderParams::default()
                };
                brotli::BrotliCompress(&mut text, &mut encoded, &parameters).ok()?;
            }
        }
        Some(encoded)
    }
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use actix_web::test::TestRequest;

    use super::*;

    #[test]
    fn the_smallest_encoding_is_chosen_that_the_client_takes() {
        for (header, encoding) in [
            ("gzip, deflate, br, zstd", Some(ContentEncoding::Brotli)),
            ("gzip, deflate", Some(ContentEncoding::Gzip)),
            ("br;q=0, gzip", Some(ContentEncoding::Gzip)),
            ("identity", None),
            ("zstd", None),
            ("", None),
        ] {
            let request = TestRequest::default().insert_header((ACCEPT_ENCODING, header));
            assert_eq!(
                ContentEncoding::from_request(&request.to_http_request()),
                encoding,
                "{header}"
            );
        }
        let silent = TestRequest::default().to_http_request();
        assert_eq!(ContentEncoding::from_request(&silent), None);
    }

    #[test]
    fn a_text_is_read_again_as_it_was() {
        let text = "Lists due Tue 20 January 2026, 20:00. ".repeat(40);
        let (mut gzip, mut brotli) = (Vec::new(), Vec::new());
        let encoded = ContentEncoding::Gzip.encode(text.as_bytes()).unwrap();
        assert!(encoded.len() * 5 < text.len());
        flate2::read::GzDecoder::new(&encoded[..])
            .read_to_end(&mut gzip)
            .unwrap();
        let encoded = ContentEncoding::Brotli.encode(text.as_bytes()).unwrap();
        assert!(encoded.len() * 5 < text.len());
        brotli::BrotliDecompress(&mut &encoded[..], &mut brotli).unwrap();
        assert_eq!([gzip, brotli], [text.as_bytes(), text.as_bytes()]);
    }
}
