//! How the text of a page goes over the wire (RFC 9110, section 8.4.1; RFC 7932 for brotli).
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

/// A coding of ours; `None` in its place leaves the text as it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Coding {
    /// What every browser reads.
    Gzip,
    /// The smaller one, which browsers take where nobody listens in.
    Brotli,
}

impl Coding {
    /// The best that the client takes.
    pub fn taken_by(request: &HttpRequest) -> Option<Self> {
        if !request.headers().contains_key(ACCEPT_ENCODING) {
            return None;
        }
        let taken = AcceptEncoding::parse(request).ok()?;
        let ours = [
            (Encoding::brotli(), Some(Self::Brotli)),
            (Encoding::gzip(), Some(Self::Gzip)),
            (Encoding::identity(), None),
        ];
        let chosen = taken.negotiate(ours.iter().map(|(name, _)| name))?;
        let found = ours.into_iter().find(|(name, _)| *name == chosen);
        found.and_then(|(_, coding)| coding)
    }

    /// As `Content-Encoding` names it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Gzip => "gzip",
            Self::Brotli => "br",
        }
    }

    /// The text in this coding; `None` when it could not be written.
    pub fn encode(self, mut text: &[u8]) -> Option<Vec<u8>> {
        let mut small = Vec::new();
        match self {
            Self::Gzip => {
                let mut writer = GzEncoder::new(&mut small, Compression::default());
                writer.write_all(text).ok()?;
                writer.finish().ok()?;
            }
            Self::Brotli => {
                let wishes = BrotliEncoderParams {
                    quality: BROTLI_QUALITY,
                    ..BrotliEncoderParams::default()
                };
                brotli::BrotliCompress(&mut text, &mut small, &wishes).ok()?;
            }
        }
        Some(small)
    }
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use actix_web::test::TestRequest;

    use super::*;

    #[test]
    fn the_best_coding_is_chosen_that_the_client_takes() {
        for (header, coding) in [
            ("gzip, deflate, br, zstd", Some(Coding::Brotli)),
            ("gzip, deflate", Some(Coding::Gzip)),
            ("br;q=0, gzip", Some(Coding::Gzip)),
            ("identity", None),
            ("zstd", None),
            ("", None),
        ] {
            let request = TestRequest::default().insert_header((ACCEPT_ENCODING, header));
            assert_eq!(
                Coding::taken_by(&request.to_http_request()),
                coding,
                "{header}"
            );
        }
        let silent = TestRequest::default().to_http_request();
        assert_eq!(Coding::taken_by(&silent), None);
    }

    #[test]
    fn a_text_is_read_again_as_it_was() {
        let text = "Lists due Tue 20 January 2026, 20:00. ".repeat(40);
        let (mut gzip, mut brotli) = (Vec::new(), Vec::new());
        let small = Coding::Gzip.encode(text.as_bytes()).unwrap();
        assert!(small.len() * 5 < text.len());
        flate2::read::GzDecoder::new(&small[..])
            .read_to_end(&mut gzip)
            .unwrap();
        let small = Coding::Brotli.encode(text.as_bytes()).unwrap();
        assert!(small.len() * 5 < text.len());
        brotli::BrotliDecompress(&mut &small[..], &mut brotli).unwrap();
        assert_eq!([gzip, brotli], [text.as_bytes(), text.as_bytes()]);
    }
}
