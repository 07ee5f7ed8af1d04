//! The pairs of a season's players who live together, for the pairing.

use std::collections::BTreeSet;

use league::ids::PlayerId;
use league::pairing::Pair;
use league::pairing::round::households::{Resident, pairs_at_home};
use league::pairing::round::method::PairingMethod;
use store::players::Player;

use crate::loaded_season::LoadedSeason;

/// The pairs among these players who live together; none in a round robin, where everybody meets.
pub(super) fn household_pairs(
    loaded: &LoadedSeason,
    there: &BTreeSet<PlayerId>,
    method: PairingMethod,
) -> Vec<Pair> {
    if method != PairingMethod::ByScore {
        return Vec::new();
    }
    let there = loaded.players.iter().filter(|it| there.contains(&it.id));
    pairs_at_home(&there.map(resident).collect::<Vec<_>>())
}

pub(crate) fn resident(player: &Player) -> Resident<'_> {
    Resident {
        player: player.id,
        household: player.household.as_deref(),
    }
}
