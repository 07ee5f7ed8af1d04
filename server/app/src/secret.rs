//! Random secrets from the operating system, and the digests that are kept in their place.

use sha2::{Digest, Sha256};

use crate::Refusal;

/// 256 random bits.
pub(crate) fn random_bytes() -> Result<[u8; 32], Refusal> {
    let mut bytes = [0; 32];
    getrandom::fill(&mut bytes).map_err(|cause| Refusal::Internal(cause.to_string()))?;
    Ok(bytes)
}

/// 256 random bits as 64 hexadecimal digits.
pub(crate) fn random_hex() -> Result<String, Refusal> {
    Ok(hex::encode(random_bytes()?))
}

/// SHA-256. Enough for secrets of full entropy, which nobody can guess; passwords need more.
pub(crate) fn digest(text: &str) -> Vec<u8> {
    digest_bytes(text.as_bytes())
}

/// SHA-256 of bytes.
pub(crate) fn digest_bytes(bytes: &[u8]) -> Vec<u8> {
    Sha256::digest(bytes).to_vec()
}
