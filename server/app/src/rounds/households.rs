//! Pairs of one household, who must not meet. The pairing gets forbidden pairs instead of households, so
//! that the public inputs number nobody's household.

use std::collections::BTreeSet;

use league::ids::PlayerId;
use league::pairing::Pair;
use league::pairing::round::method::PairingMethod;

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
    let homes: Vec<(&str, PlayerId)> = there
        .filter_map(|player| Some((player.household.as_deref()?, player.id)))
        .collect();
    let ahead = homes.iter().enumerate();
    ahead
        .flat_map(|(at, (home, one))| {
            let others = homes.iter().skip(at + 1);
            let together = others.filter(move |(other, _)| home == other);
            together.filter_map(|(_, other)| Pair::new(*one, *other))
        })
        .collect()
}
