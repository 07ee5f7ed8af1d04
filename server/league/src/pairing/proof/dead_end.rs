//! The check of a dead end by exhaustive search: slow and simple, so that it can be trusted.

use std::collections::BTreeSet;

use crate::pairing::cost::PairCosts;
use crate::pairing::round::certificate::Vertex;
use crate::pairing::round::hall::Capacity;

/// Do these pairs pair everyone, so that the rounds claimed can no longer be played without a rematch
/// or a second bye?
pub fn is_dead_end(
    costs: &PairCosts,
    capacity: &Capacity,
    rounds: usize,
    mut played: BTreeSet<[Vertex; 2]>,
) -> bool {
    let everyone: Vec<Vertex> = (0..costs.vertex_count() as Vertex).collect();
    let paired: BTreeSet<Vertex> = played.iter().flatten().copied().collect();
    let whole = rounds > 0 && paired.len() == everyone.len();
    whole
        && !can_pair(
            costs,
            capacity,
            &mut played,
            &mut Vec::new(),
            &everyone,
            rounds,
        )
}

/// Pairs the first of `free` in every way; `pairs` are this round's so far.
fn can_pair(
    costs: &PairCosts,
    capacity: &Capacity,
    played: &mut BTreeSet<[Vertex; 2]>,
    pairs: &mut Vec<[Vertex; 2]>,
    free: &[Vertex],
    rounds: usize,
) -> bool {
    if rounds == 0 {
        return true;
    }
    let Some((&first, rest)) = free.split_first() else {
        let participants = costs.participants();
        let games = pairs
            .iter()
            .filter(|[_, b]| (*b as usize) < participants.count());
        let nights = games.map(|pair| {
            let [a, b] = pair.map(|vertex| participants.list[vertex as usize].nights);
            a.intersection(b)
        });
        let fits = capacity.find_crowded(&nights.collect::<Vec<_>>()).is_none();
        let everyone: Vec<Vertex> = (0..costs.vertex_count() as Vertex).collect();
        return fits
            && can_pair(
                costs,
                capacity,
                played,
                &mut Vec::new(),
                &everyone,
                rounds - 1,
            );
    };
    rest.iter().any(|&other| {
        let pair = [first, other];
        if !is_unmet(costs, pair) || !played.insert(pair) {
            return false;
        }
        let left: Vec<Vertex> = rest
            .iter()
            .copied()
            .filter(|&vertex| vertex != other)
            .collect();
        pairs.push(pair);
        let found = can_pair(costs, capacity, played, pairs, &left, rounds);
        pairs.pop();
        if !found {
            played.remove(&pair);
        }
        found
    })
}

/// May these two meet, and have they not, in the rounds before this one?
fn is_unmet(costs: &PairCosts, [a, b]: [Vertex; 2]) -> bool {
    let participants = costs.participants();
    match participants.list.get(b as usize) {
        Some(_) => {
            participants.may_meet(a, b) && participants.relation(a as usize, b as usize).met == 0
        }
        None => participants
            .list
            .get(a as usize)
            .is_some_and(|player| player.byes == 0),
    }
}
