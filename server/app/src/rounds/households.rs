//! The pairs of a season's players who live together, for the pairing.

use std::collections::BTreeSet;

use league::ids::PlayerId;
use league::pairing::Pair;
use league::pairing::round::households::{Resident, pairs_kept_apart};
use league::pairing::round::method::PairingMethod;
use store::players::Player;

use crate::loaded_season::LoadedSeason;

/// The pairs among these players that are kept apart because they live together.
pub(super) fn household_pairs(
    loaded: &LoadedSeason,
    there: &BTreeSet<PlayerId>,
    method: PairingMethod,
) -> Vec<Pair> {
    let there = loaded.players.iter().filter(|it| there.contains(&it.id));
    pairs_kept_apart(method, &there.map(resident).collect::<Vec<_>>())
}

pub(crate) fn resident(player: &Player) -> Resident<'_> {
    Resident {
        player: player.id,
        household: player.household.as_deref(),
    }
}
