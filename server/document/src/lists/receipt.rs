//! The receipt of a sealed list: a digest that a player can check without this program.
//!
//! The receipt is SHA-256 over the canonical JSON (RFC 8785) of [`SealedList`]. The salt keeps
//! others from trying likely lists against a published receipt; the player gets it with the
//! receipt and can prove later, with `sha256sum` alone, what was sealed.

use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use utoipa::ToSchema;

use crate::lists::army_list::ArmyListDocument;

/// What a receipt is the digest of.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SealedList {
    /// The list.
    pub list: ArmyListDocument,
    /// Which list of whom in which week: the text of the list's id.
    pub list_id: String,
    /// Secret random bytes as lower-case hexadecimal digits; at least 16 bytes.
    pub salt: String,
}

impl SealedList {
    /// The bytes that are digested: canonical JSON (RFC 8785), without a line break.
    ///
    /// # Errors
    /// Only what serialising itself can refuse; no value of this type makes it do so.
    pub fn canonical(&self) -> Result<Vec<u8>, serde_json::Error> {
        serde_json_canonicalizer::to_vec(self)
    }

    /// The receipt as 64 lower-case hexadecimal digits: what `sha256sum` prints for
    /// [`SealedList::canonical`].
    ///
    /// # Errors
    /// As [`SealedList::canonical`].
    pub fn receipt(&self) -> Result<String, serde_json::Error> {
        self.canonical()
            .map(|bytes| hex::encode(Sha256::digest(bytes)))
    }
}
