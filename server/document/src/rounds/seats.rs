//! The seats of a round robin: drawn at the start by lots that follow from the season's secret.

use league::ids::PlayerId;
use league::pairing::round::draw::{Draw, DrawSecret};
use sha2::{Digest, Sha256};
use uuid::Uuid;

/// The lots of a season: HMAC-SHA-256 of the digest of its identity under its secret.
pub fn seat_draw(secret: &DrawSecret, season: Uuid) -> Draw {
    secret.draw(Sha256::digest(season.as_bytes()).into())
}

/// These players in the order of their seats: by lot.
pub fn order_by_lot(lots: &Draw, mut players: Vec<PlayerId>) -> Vec<PlayerId> {
    let urn = lots.numbers();
    players.sort_by_key(|&player| (urn.number_of(player), player));
    players
}
