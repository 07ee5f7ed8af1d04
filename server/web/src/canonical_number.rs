//! Canonical numbers in paths, so that one thing has one address.

use serde::de::Error as _;
use serde::{Deserialize, Deserializer};

/// A number in an address, written in one way alone: `1`, not `01` nor `+1`.
///
/// # Errors
/// Anything else.
pub fn canonical_number<'de, D: Deserializer<'de>>(source: D) -> Result<u8, D::Error> {
    let text = String::deserialize(source)?;
    let number = text.parse::<u8>().map_err(D::Error::custom)?;
    if number.to_string() == text {
        Ok(number)
    } else {
        Err(D::Error::custom("no plain number"))
    }
}
