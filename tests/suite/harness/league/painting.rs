//! Painting claims and photos, as a client sends and reads them.

use reqwest::Method;
use serde::Deserialize;

use super::season::Season;
use crate::harness::Answer;

/// What a player says of painted models.
#[derive(Clone, Debug, Deserialize)]
pub struct Claim {
    pub id: String,
    pub checker: Option<String>,
    pub photo: Option<String>,
}

/// A photo that was taken in.
#[derive(Debug, Deserialize)]
pub struct TakenIn {
    pub photo: String,
    /// What the sender should think of.
    pub caution: String,
}

impl Season {
    pub fn claims(&self) -> Answer<Vec<Claim>> {
        self.get("painting")
    }

    pub fn verify_claim(&self, claim: &str) -> Answer<Claim> {
        self.act(format_args!("painting/{claim}/verify"))
    }

    pub fn send_photo(&self, bytes: &[u8]) -> Answer<TakenIn> {
        self.ask(Method::POST, "photos", |request| {
            request.body(bytes.to_vec())
        })
    }
}
