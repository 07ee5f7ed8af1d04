//! The checker's own look at the rounds to come: every future is tried, nothing is clever.

use std::collections::BTreeSet;

use crate::pairing::cost::Tariff;
use crate::pairing::round::certificate::Place;
use crate::pairing::round::hall::Capacity;

/// Do these pairs pair everyone, so that the rounds claimed can no longer be played without a rematch
/// or a second bye?
pub fn is_dead_end(
    tariff: &Tariff,
    capacity: &Capacity,
    rounds: usize,
    mut played: BTreeSet<[Place; 2]>,
) -> bool {
    let everyone: Vec<Place> = (0..tariff.places() as Place).collect();
    let paired: BTreeSet<Place> = played.iter().flatten().copied().collect();
    let whole = rounds > 0 && paired.len() == everyone.len();
    whole
        && !round(
            tariff,
            capacity,
            &mut played,
            &mut Vec::new(),
            &everyone,
            rounds,
        )
}

/// Pairs the first of `free` in every way; `pairs` are this round's so far.
fn round(
    tariff: &Tariff,
    capacity: &Capacity,
    played: &mut BTreeSet<[Place; 2]>,
    pairs: &mut Vec<[Place; 2]>,
    free: &[Place],
    rounds: usize,
) -> bool {
    if rounds == 0 {
        return true;
    }
    let Some((&first, rest)) = free.split_first() else {
        let field = tariff.field();
        let games = pairs
            .iter()
            .filter(|[_, b]| (*b as usize) < field.players());
        let nights = games.map(|pair| {
            let [a, b] = pair.map(|place| field.entrants[place as usize].nights);
            a.and(b)
        });
        let fits = capacity.crowded(&nights.collect::<Vec<_>>()).is_none();
        let everyone: Vec<Place> = (0..tariff.places() as Place).collect();
        return fits
            && round(
                tariff,
                capacity,
                played,
                &mut Vec::new(),
                &everyone,
                rounds - 1,
            );
    };
    rest.iter().any(|&other| {
        let pair = [first, other];
        if !is_new(tariff, pair) || !played.insert(pair) {
            return false;
        }
        let left: Vec<Place> = rest
            .iter()
            .copied()
            .filter(|&place| place != other)
            .collect();
        pairs.push(pair);
        let found = round(tariff, capacity, played, pairs, &left, rounds);
        pairs.pop();
        if !found {
            played.remove(&pair);
        }
        found
    })
}

/// May these two meet, and have they not, in the rounds before this one?
fn is_new(tariff: &Tariff, [a, b]: [Place; 2]) -> bool {
    let field = tariff.field();
    match field.entrants.get(b as usize) {
        Some(_) => field.may_meet(a, b) && field.between(a as usize, b as usize).met == 0,
        None => field
            .entrants
            .get(a as usize)
            .is_some_and(|player| player.byes == 0),
    }
}
