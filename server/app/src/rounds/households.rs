//! Who lives together does not meet. The pairing is told of games that are ruled out, so that the
//! public inputs number nobody's household.

use std::collections::BTreeSet;

use league::ids::PlayerId;
use league::pairing::Pair;
use league::pairing::round::method::Method;

use crate::facts::Loaded;

/// The pairs among these players who live together; none in a round robin, where everybody meets.
pub(super) fn pairs_at_home(
    loaded: &Loaded,
    there: &BTreeSet<PlayerId>,
    method: Method,
) -> Vec<Pair> {
    if method != Method::ByScore {
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
