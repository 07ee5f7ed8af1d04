//! File format detection by magic bytes: a picture and nothing else, whatever the file is called.

/// How archives and programs begin (common practice, no source); documents and scripts begin as text.
const PROGRAM_MAGIC: [&[u8]; 3] = [b"PK\x03\x04", b"MZ", b"\x7FELF"];
/// So many bytes of text in a row are no chance.
const MIN_TEXT_RUN: usize = 8;

/// Whether the bytes are a JPEG (ITU-T T.81, B.1.1.3), PNG (PNG, third edition, section 5.2) or WebP
/// (RFC 9649, section 2.4) that carries nothing for another program: no script within, and after its
/// end no text, archive or program. Phones append further and moving pictures of their own there,
/// which does no harm: nothing but pixels is kept either way.
pub fn is_picture(bytes: &[u8]) -> bool {
    let end = match bytes {
        [0xFF, 0xD8, 0xFF, ..] => end_of_jpeg(bytes),
        [0x89, b'P', b'N', b'G', b'\r', b'\n', 0x1A, b'\n', ..] => end_of_png(bytes),
        [
            b'R',
            b'I',
            b'F',
            b'F',
            _,
            _,
            _,
            _,
            b'W',
            b'E',
            b'B',
            b'P',
            ..,
        ] => end_of_webp(bytes),
        _ => return false,
    };
    // Where the end is missing the file is truncated, which is left to the decoder to report.
    let after = end.and_then(|end| bytes.get(end..)).unwrap_or_default();
    !has_payload(after) && !has_script(bytes)
}

fn has_payload(after: &[u8]) -> bool {
    let filled = after.iter().position(|byte| *byte != 0);
    let Some(after) = filled.and_then(|at| after.get(at..)) else {
        return false;
    };
    let is_text = |byte: &u8| matches!(byte, b' '..=b'~' | b'\t' | b'\r' | b'\n');
    after.iter().take(MIN_TEXT_RUN).all(is_text)
        || PROGRAM_MAGIC.iter().any(|head| after.starts_with(head))
}

fn has_script(bytes: &[u8]) -> bool {
    let script = b"<script";
    bytes
        .windows(script.len())
        .any(|text| text.eq_ignore_ascii_case(script))
}

/// Just past the end of the first picture: its segments by their lengths, and in the scans the first
/// marker that is neither a stuffed zero nor a restart (ITU-T T.81, B.1.1.5).
pub(super) fn end_of_jpeg(bytes: &[u8]) -> Option<usize> {
    let mut at = 2;
    loop {
        let (&prefix, &marker) = (bytes.get(at)?, bytes.get(at + 1)?);
        match (prefix, marker) {
            (0xFF, 0xD9) => return Some(at + 2),
            (0xFF, 0xFF) => at += 1,
            (0xFF, 0x00 | 0x01 | 0xD0..=0xD7) => at += 2,
            (0xFF, _) => {
                let length = bytes.get(at + 2..at + 4)?.try_into().ok()?;
                at += 2 + usize::from(u16::from_be_bytes(length));
            }
            _ => at += 1,
        }
    }
}

/// Past the chunk `IEND`.
fn end_of_png(bytes: &[u8]) -> Option<usize> {
    let mut at = 8;
    loop {
        let length = bytes.get(at..at + 4)?.try_into().ok()?;
        let kind = bytes.get(at + 4..at + 8)?;
        let length = usize::try_from(u32::from_be_bytes(length)).ok()?;
        at = at.checked_add(length)?.checked_add(12)?;
        if kind == b"IEND" {
            return Some(at);
        }
    }
}

/// Past as many bytes as the file says it has.
fn end_of_webp(bytes: &[u8]) -> Option<usize> {
    let length = bytes.get(4..8)?.try_into().ok()?;
    let length = usize::try_from(u32::from_le_bytes(length)).ok()?;
    length.checked_add(8)
}

#[cfg(test)]
mod tests {
    use std::io::Cursor;

    use image::{DynamicImage, ImageFormat};

    use super::*;

    fn picture(format: ImageFormat) -> Vec<u8> {
        let mut bytes = Cursor::new(Vec::new());
        let picture = DynamicImage::new_rgb8(16, 16);
        picture.write_to(&mut bytes, format).unwrap();
        bytes.into_inner()
    }

    const FORMATS: [ImageFormat; 3] = [ImageFormat::Jpeg, ImageFormat::Png, ImageFormat::WebP];

    #[test]
    fn a_picture_ends_where_its_file_ends() {
        for (format, end) in FORMATS.iter().zip([end_of_jpeg, end_of_png, end_of_webp]) {
            let bytes = picture(*format);
            assert_eq!(end(&bytes), Some(bytes.len()), "{format:?}");
            assert!(is_picture(&bytes), "{format:?}");
        }
    }

    #[test]
    fn what_phones_append_may_follow_a_picture_and_texts_archives_and_programs_may_not() {
        for format in FORMATS {
            let with = |after: &[u8]| is_picture(&[&picture(format)[..], after].concat());
            assert!(with(&[0; 100]), "{format:?}");
            assert!(with(&picture(ImageFormat::Jpeg)), "{format:?}");
            assert!(with(b"\0\0\0\x18ftypmp42"), "{format:?}");
            assert!(with(b"\0\0\x01\x0A\x0E\0\0\0Taken_at"), "{format:?}");
            let payloads = [
                &b"PK\x03\x04"[..],
                b"\0\0<html>",
                b"%PDF-1.7",
                b"MZ\x90\0",
                b"*/=alert(1)",
            ];
            for payload in payloads {
                assert!(!with(payload), "{format:?} with {payload:?}");
            }
        }
    }

    #[test]
    fn no_part_of_a_picture_holds_a_script() {
        let jpeg = picture(ImageFormat::Jpeg);
        let text = b"<SCRIPT>alert(1)</script>";
        let length = u16::try_from(text.len() + 2).unwrap().to_be_bytes();
        let comment = [&jpeg[..2], b"\xFF\xFE", &length, text, &jpeg[2..]].concat();
        assert_eq!(end_of_jpeg(&comment), Some(comment.len()));
        assert!(!is_picture(&comment));
    }

    #[test]
    fn a_torn_picture_is_left_to_the_decoder_and_a_text_is_none() {
        for format in FORMATS {
            let bytes = picture(format);
            assert!(is_picture(&bytes[..bytes.len() * 3 / 4]), "{format:?}");
        }
        for text in [&b"<svg/>"[..], b"", b"\xFF\xD8", b"RIFF\0\0\0\0WAVE"] {
            assert!(!is_picture(text), "{text:?}");
        }
    }
}
