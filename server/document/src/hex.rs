//! Hexadecimal encoding of digests, salts and seeds.

/// The bytes as lower-case hexadecimal digits.
pub fn encode_hex(bytes: &[u8]) -> String {
    ::hex::encode(bytes)
}

/// So many bytes from their hexadecimal digits; `None` for another length or other characters.
pub fn decode_hex<const BYTES: usize>(text: &str) -> Option<[u8; BYTES]> {
    ::hex::decode(text).ok()?.try_into().ok()
}
