//! The pairs that a sparse solve starts from.

use crate::pairing::round::certificate::Place;
use crate::pairing::solve::graph::Graph;

use super::cost_table::Quick;

/// Places looked at on each side of a place, in order of score.
const WINDOW: usize = 48;
/// Cheapest of them that become candidates.
const NEAR: usize = 12;
/// Candidates drawn from further away, and how far at least.
const FAR: usize = 4;
const FAR_WINDOW: usize = 200;

/// A repair has at most one place without a pair in so many.
const FEW: usize = 8;

/// Near and a few far pairs, every published one, every place with its neighbour, every bye with its
/// cheapest players.
///
/// Far pairs are drawn from the whole rest of a score group: where hundreds are equal, what one end
/// has too much of must reach the other.
pub fn near_and_far(quick: &Quick<'_>) -> Graph {
    let (players, places) = (quick.players(), quick.places());
    let mut pairs = Pairs {
        quick,
        priced: Vec::with_capacity(players * (NEAR + FAR + 2)),
    };
    let mut near = Vec::with_capacity(NEAR + 1);
    for a in 0..players {
        nearest(quick, a, &mut near);
        let priced = near
            .iter()
            .map(|&(price, b)| (a as Place, b as Place, price));
        pairs.priced.extend(priced);
    }
    for (a, b) in quick.published() {
        pairs.add(a, b);
    }
    let mut scatter = Scatter(1);
    let mut end = 0;
    for a in 0..players {
        if end <= a {
            let equal = |&b: &usize| b < players && quick.score(b) == quick.score(a);
            end = (a..).take_while(equal).count() + a;
        }
        let drawn = (0..FAR).map(|_| a + 1 + scatter.below(FAR_WINDOW.max(end - a)));
        for b in [a + 1].into_iter().chain(drawn).filter(|&b| b < players) {
            pairs.add(a, b);
        }
    }
    for bye in players..places {
        let all = (0..players).filter_map(|a| Some((quick.price(a, bye)?, a)));
        let priced = cheapest(all.collect()).into_iter();
        pairs
            .priced
            .extend(priced.map(|(price, a)| (a as Place, bye as Place, price)));
    }
    Graph::of(places, &pairs.priced)
}

/// Pairs with their prices.
struct Pairs<'a> {
    quick: &'a Quick<'a>,
    priced: Vec<(Place, Place, i128)>,
}

impl Pairs<'_> {
    fn add(&mut self, a: usize, b: usize) {
        if let Some(price) = self.quick.price(a, b) {
            self.priced.push((a as Place, b as Place, price));
        }
    }
}

/// The cheapest pairs of a place with those around it. What lies further off in score than the
/// worst of them costs at least as much.
fn nearest(quick: &Quick<'_>, a: usize, kept: &mut Vec<(i128, usize)>) {
    kept.clear();
    let (mut above, mut below) = (true, true);
    for step in 1..=WINDOW {
        above &= a >= step;
        below &= a + step < quick.players();
        for (open, b) in [(&mut above, a.wrapping_sub(step)), (&mut below, a + step)] {
            let worst = if kept.len() < NEAR {
                i128::MAX
            } else {
                kept[NEAR - 1].0
            };
            if !*open || quick.floor(quick.score(a), quick.score(b)) >= worst {
                *open = false;
                continue;
            }
            let untied = quick.untied(a, b).filter(|&untied| untied < worst);
            let price = untied.and_then(|untied| quick.tied(a, b, untied));
            if let Some(price) = price.filter(|&price| price < worst) {
                let at = kept.partition_point(|&(other, _)| other <= price);
                kept.insert(at, (price, b));
                kept.truncate(NEAR);
            }
        }
        if !above && !below {
            break;
        }
    }
}

fn cheapest(mut all: Vec<(i128, usize)>) -> Vec<(i128, usize)> {
    if all.len() > NEAR {
        all.select_nth_unstable(NEAR);
        all.truncate(NEAR);
    }
    all
}

/// Published pairs and whatever the places without one can have, where those are few: a repair.
///
/// Every other pair is a change, so the published pairs are all at their best from the start.
pub fn around_published(quick: &Quick<'_>) -> Option<Graph> {
    let mut pairs = Pairs {
        quick,
        priced: Vec::new(),
    };
    for (a, b) in quick.published() {
        pairs.add(a, b);
    }
    let mut free = vec![true; quick.places()];
    for &(a, b, _) in &pairs.priced {
        (free[a as usize], free[b as usize]) = (false, false);
    }
    let alone: Vec<usize> = (0..free.len()).filter(|&place| free[place]).collect();
    if alone.len() * FEW > free.len() {
        return None;
    }
    for &a in &alone {
        for b in (0..free.len()).filter(|&b| b > a || !free[b]) {
            pairs.add(a, b);
        }
    }
    Some(Graph::of(quick.places(), &pairs.priced))
}

/// A fixed sequence of scattered numbers (Lehmer generator of Park and Miller 1988): candidates need
/// spread, not chance.
struct Scatter(u64);

impl Scatter {
    fn below(&mut self, limit: usize) -> usize {
        self.0 = self.0 * 48_271 % 0x7fff_ffff;
        self.0 as usize % limit
    }
}
