//! Secrets drawn from the operating system, and the digests by which they are known again.

use sha2::{Digest, Sha256};

use crate::Refusal;

/// 256 bits from the operating system.
pub(crate) fn draw() -> Result<[u8; 32], Refusal> {
    let mut bytes = [0; 32];
    getrandom::fill(&mut bytes).map_err(|cause| Refusal::Broken(cause.to_string()))?;
    Ok(bytes)
}

/// A secret as text: 64 hexadecimal digits.
pub(crate) fn draw_text() -> Result<String, Refusal> {
    Ok(document::hex(&draw()?))
}

/// SHA-256. Enough for secrets of full entropy, which nobody can guess; passwords need more.
pub(crate) fn digest(text: &str) -> Vec<u8> {
    digest_bytes(text.as_bytes())
}

/// SHA-256 of bytes.
pub(crate) fn digest_bytes(bytes: &[u8]) -> Vec<u8> {
    Sha256::digest(bytes).to_vec()
}
