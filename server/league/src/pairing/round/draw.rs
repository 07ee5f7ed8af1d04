//! The draw that decides between equally good pairings: a commitment before, reproducible after.
//!
//! At season start the league publishes [`DrawSecret::commitment`]; each round's [`Draw`] is
//! HMAC-SHA-256 (RFC 2104, FIPS 198-1) of the round's locked inputs under that secret; at the end
//! the secret is revealed. Who sees the inputs cannot choose the draw, and who knows the secret
//! cannot change it. The model is RFC 3797, publicly verifiable random selection.

use hmac::{Hmac, KeyInit, Mac};
use sha2::{Digest, Sha256};

use crate::ids::PlayerId;

/// A season's secret: 256 bits from the server's random source, shown to nobody before the end.
#[derive(Clone, PartialEq, Eq)]
pub struct DrawSecret([u8; 32]);

impl DrawSecret {
    /// The secret with these bytes.
    pub const fn new(bytes: [u8; 32]) -> Self {
        Self(bytes)
    }

    /// The bytes, for storage and for the final reveal.
    pub const fn reveal(&self) -> [u8; 32] {
        self.0
    }

    /// SHA-256 (FIPS 180-4) of the secret: published at season start.
    pub fn commitment(&self) -> Commitment {
        Commitment(Sha256::digest(self.0).into())
    }

    /// The draw of the round whose locked inputs have this SHA-256 digest.
    pub fn draw(&self, inputs: [u8; 32]) -> Draw {
        Draw(mac(&keyed(&self.0), &inputs))
    }
}

impl std::fmt::Debug for DrawSecret {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("Secret(hidden)")
    }
}

/// The public promise of a secret.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Commitment(pub [u8; 32]);

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Draw(pub [u8; 32]);

impl Draw {
    /// The numbers that this draw gives to players.
    pub fn numbers(&self) -> DrawNumbers {
        DrawNumbers(keyed(&self.0))
    }
}

/// The numbers of one draw; holds the keyed hash, so that many players cost little.
pub struct DrawNumbers(Hmac<Sha256>);

impl DrawNumbers {
    /// The number this player drew.
    pub fn number_of(&self, player: PlayerId) -> u64 {
        let drawn = mac(&self.0, player.0.as_bytes());
        drawn[..8]
            .iter()
            .fold(0, |sum, &byte| sum << 8 | u64::from(byte))
    }
}

/// HMAC-SHA-256 under a key. One shorter than the block of 64 bytes is filled with zeros (RFC 2104,
/// section 2); what the key alone decides is computed once for many messages (section 4).
fn keyed(key: &[u8; 32]) -> Hmac<Sha256> {
    let mut block = [0; 64];
    block[..32].copy_from_slice(key);
    Hmac::new(&block.into())
}

fn mac(keyed: &Hmac<Sha256>, message: &[u8]) -> [u8; 32] {
    let mac = keyed.clone().chain_update(message);
    mac.finalize().into_bytes().into()
}

#[cfg(test)]
mod tests {
    use hmac::{Hmac, KeyInit, Mac};
    use sha2::{Digest, Sha256};

    use super::*;

    fn bytes(text: &str) -> Vec<u8> {
        hex::decode(text).unwrap()
    }

    /// Our own message of 32 bytes; the value comes from Python's hmac and hashlib.
    #[test]
    fn the_draw_is_the_hmac_of_the_locked_inputs_under_the_secret() {
        let secret = DrawSecret::new([0x0b; 32]);
        assert_eq!(secret.draw([0x61; 32]).0.to_vec(), bytes(DRAW));
        assert_eq!(secret.commitment().0.to_vec(), bytes(COMMITMENT));
        assert_eq!(format!("{secret:?}"), "Secret(hidden)");
    }

    /// FIPS 180-4 example "abc" (value from memory, recomputed with Python's hashlib).
    #[test]
    fn the_digest_is_the_sha_256_of_fips_180() {
        let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(Sha256::digest(b"abc").to_vec(), bytes(abc));
    }

    /// RFC 4231, test cases 1 and 2 (values from memory, recomputed with Python's hmac).
    #[test]
    fn the_mac_is_the_hmac_of_rfc_4231() {
        for (key, message, expected) in [
            (&[0x0b; 20][..], &b"Hi There"[..], RFC_4231_CASE_1),
            (b"Jefe", b"what do ya want for nothing?", RFC_4231_CASE_2),
        ] {
            let mut mac = Hmac::<Sha256>::new_from_slice(key).unwrap();
            mac.update(message);
            assert_eq!(mac.finalize().into_bytes().to_vec(), bytes(expected));
        }
    }

    const RFC_4231_CASE_1: &str =
        "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7";
    const RFC_4231_CASE_2: &str =
        "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843";
    const DRAW: &str = "8ad0719ef348b8b3d9d647cf3b39d33c0656892293a9f3fc0e9e3ec6eadfefb6";
    const COMMITMENT: &str = "f0e38b830ebd8a506615ecd154330ec07ff6bf5030447b44e297db1d4b7514ac";
}
