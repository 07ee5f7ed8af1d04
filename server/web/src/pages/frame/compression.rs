//! Compression of pages and static files (RFC 9110, section 8.4.1; RFC 7932 for brotli).
//!
//! A page may carry a secret beside what a stranger wrote, whose length compression would tell:
//! the token of its forms. `csrf` draws that anew for every answer, so that there is nothing to learn.

use std::io::Write;

use actix_web::HttpRequest;
use actix_web::http::header::{ACCEPT_ENCODING, AcceptEncoding, ContentEncoding, Encoding, Header};
use brotli::enc::BrotliEncoderParams;
use flate2::Compression;
use flate2::write::GzEncoder;

/// Within a few percent of the smallest, in a fraction of the time.
const BROTLI_QUALITY: i32 = 5;

/// The smallest encoding that `Accept-Encoding` allows.
pub fn negotiate(request: &HttpRequest) -> ContentEncoding {
    if !request.headers().contains_key(ACCEPT_ENCODING) {
        return ContentEncoding::Identity;
    }
    let ours = [Encoding::brotli(), Encoding::gzip(), Encoding::identity()];
    let accepted = AcceptEncoding::parse(request).ok();
    match accepted.and_then(|accepted| accepted.negotiate(ours.iter())) {
        Some(Encoding::Known(encoding)) => encoding,
        _ => ContentEncoding::Identity,
    }
}

/// The text in an encoding; `None` where it stays as it is.
pub fn compress(encoding: ContentEncoding, mut text: &[u8]) -> Option<Vec<u8>> {
    let mut encoded = Vec::new();
    match encoding {
        ContentEncoding::Gzip => {
            let mut writer = GzEncoder::new(&mut encoded, Compression::default());
            writer.write_all(text).ok()?;
            writer.finish().ok()?;
        }
        ContentEncoding::Brotli => {
            let parameters = BrotliEncoderParams {
                quality: BROTLI_QUALITY,
                ..BrotliEncoderParams::default()
            };
            brotli::BrotliCompress(&mut text, &mut encoded, &parameters).ok()?;
        }
        _ => return None,
    }
    Some(encoded)
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use actix_web::test::TestRequest;

    use super::*;

    #[test]
    fn the_smallest_encoding_is_chosen_that_the_client_takes() {
        for (header, encoding) in [
            ("gzip, deflate, br, zstd", ContentEncoding::Brotli),
            ("gzip, deflate", ContentEncoding::Gzip),
            ("br;q=0, gzip", ContentEncoding::Gzip),
            ("identity", ContentEncoding::Identity),
            ("zstd", ContentEncoding::Identity),
            ("", ContentEncoding::Identity),
        ] {
            let request = TestRequest::default().insert_header((ACCEPT_ENCODING, header));
            assert_eq!(negotiate(&request.to_http_request()), encoding, "{header}");
        }
        let silent = TestRequest::default().to_http_request();
        assert_eq!(negotiate(&silent), ContentEncoding::Identity);
    }

    #[test]
    fn a_text_is_read_again_as_it_was() {
        let text = "Lists due Tue 20 January 2026, 20:00. ".repeat(40);
        let (mut gzip, mut brotli) = (Vec::new(), Vec::new());
        let encoded = compress(ContentEncoding::Gzip, text.as_bytes()).unwrap();
        assert!(encoded.len() * 5 < text.len());
        flate2::read::GzDecoder::new(&encoded[..])
            .read_to_end(&mut gzip)
            .unwrap();
        let encoded = compress(ContentEncoding::Brotli, text.as_bytes()).unwrap();
        assert!(encoded.len() * 5 < text.len());
        brotli::BrotliDecompress(&mut &encoded[..], &mut brotli).unwrap();
        assert_eq!([gzip, brotli], [text.as_bytes(), text.as_bytes()]);
    }
}
