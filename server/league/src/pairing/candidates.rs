//! The few pairs that a large field is first solved on.
//!
//! Players stand in order of score, so good partners are near: every place brings the cheapest pairs
//! of its window. Near pairs alone make a chain, along which the duals of equal players drift apart;
//! a few pairs from further away, and across a wide score group, hold it together. The pair with the
//! next place is always there, so that there is a perfect matching wherever neighbours may meet.

use std::ops::Range;

use super::certificate::Place;
use super::cost::Tariff;
use super::quick::Quick;
use super::solve::Graph;

/// Places looked at on each side of a place, in order of score.
const WINDOW: usize = 48;
/// Cheapest of them that become candidates.
const NEAR: usize = 12;
/// Candidates drawn from further away, and how far.
const FAR: usize = 4;
const FAR_WINDOW: usize = 200;
/// In a score group wider than the window: so many places drawn from all of it, and how many of the
/// cheapest become candidates.
const DRAWN: usize = 12;
const ACROSS: usize = 4;

/// Near and a few far pairs, every place with its neighbour, every bye with its cheapest players.
pub fn candidates(tariff: &Tariff, quick: &Quick<'_>) -> Graph {
    let (players, places) = (tariff.field().players(), tariff.places());
    let groups = groups(tariff);
    let mut scatter = Scatter(1);
    let mut chosen = Candidates {
        quick,
        players,
        priced: Vec::new(),
        graph: Graph::new(places),
    };
    for a in 0..places {
        let Some(group) = groups.get(a) else {
            chosen.add(a, 0..players, NEAR);
            continue;
        };
        chosen.add(a, a.saturating_sub(WINDOW)..a + 1 + WINDOW, NEAR);
        chosen.add(a, [a + 1], 1);
        chosen.add(
            a,
            [(); FAR].map(|()| a + 1 + scatter.below(FAR_WINDOW)),
            FAR,
        );
        if group.len() > WINDOW {
            let drawn = [(); DRAWN].map(|()| group.start + scatter.below(group.len()));
            chosen.add(a, drawn, ACROSS);
        }
    }
    chosen.graph
}

struct Candidates<'a> {
    quick: &'a Quick<'a>,
    players: usize,
    priced: Vec<(i128, usize)>,
    graph: Graph,
}

impl Candidates<'_> {
    /// Joins a place to the cheapest of some players.
    fn add(&mut self, a: usize, others: impl IntoIterator<Item = usize>, most: usize) {
        let (quick, players) = (self.quick, self.players);
        let others = others.into_iter().filter(|&b| b != a && b < players);
        self.priced.clear();
        self.priced
            .extend(others.filter_map(|b| Some((quick.price(a, b)?, b))));
        if self.priced.len() > most {
            self.priced.select_nth_unstable(most);
            self.priced.truncate(most);
        }
        for &(price, b) in &self.priced {
            if !self.graph.joins(a as Place, b as Place) {
                self.graph.join(a as Place, b as Place, price);
            }
        }
    }
}

/// For each player's place the places of equal score.
fn groups(tariff: &Tariff) -> Vec<Range<usize>> {
    let mut groups = Vec::with_capacity(tariff.places());
    for same in tariff.field().entrants.chunk_by(|a, b| a.score == b.score) {
        let start = groups.len();
        groups.resize(start + same.len(), start..start + same.len());
    }
    groups
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
