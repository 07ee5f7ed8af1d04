//! The optimum over all pairs, found on a few of them.
//!
//! Players stand in order of score, so good partners are near. The matching is solved on near and a
//! few random candidates; then every absent pair is priced with the duals. Pairs that undercut them
//! join the graph, and what they break is searched again, until none is left: then the duals are
//! feasible for all pairs and the matching is the optimum of the complete graph, which is never
//! stored.

use super::certificate::Place;
use super::cost::Tariff;
use super::pricing::undercutting;
use super::quick::Quick;
use super::solve::{Graph, Matcher, OddSets};

/// Fields up to this size are solved on all pairs at once.
pub const DENSE: usize = 64;

/// Places looked at on each side of a place, in order of score.
const WINDOW: usize = 48;
/// Cheapest of them that become candidates.
const NEAR: usize = 12;
/// Candidates drawn from further away, and how far.
const FAR: usize = 4;
const FAR_WINDOW: usize = 200;
/// In a score group wider than the window: so many places drawn from all of it, and how many of the
/// cheapest become candidates. They hold the group together, where near ones only make a chain.
const DRAWN: usize = 12;
const ACROSS: usize = 4;

/// Undercutting pairs that the first pass may add for two scores; each pass may add twice as many as
/// the one before, so that there are few passes even where a whole group undercuts.
const REPORTED: usize = 16;
/// Undercutting pairs up to which the matching is repaired: each repair dissolves the odd sets around
/// a place, so that many cost more than solving anew.
const REPAIRED: usize = 128;

/// The optimum over all pairs that have a price.
///
/// # Errors
/// [`OddSets`] when there is no perfect matching.
pub fn optimum(tariff: &Tariff) -> Result<Matcher, OddSets> {
    let quick = Quick::new(tariff);
    if tariff.places() <= DENSE {
        return Matcher::optimum(tariff.places(), |a, b| quick.price(a, b));
    }
    let matcher = Matcher::new(candidates(tariff, &quick));
    complete(tariff, &quick, matcher, |_, _| true)
}

/// The optimum of a solved matcher without some of its pairs: only what they held together is
/// searched again.
///
/// # Errors
/// [`OddSets`] when there is no perfect matching.
pub fn without(
    tariff: &Tariff,
    mut matcher: Matcher,
    pairs: &[[Place; 2]],
) -> Result<Matcher, OddSets> {
    for &[a, b] in pairs {
        matcher.forbid(a, b);
    }
    let is_open = |a: usize, b: usize| !pairs.contains(&[a as Place, b as Place]);
    complete(tariff, &Quick::new(tariff), matcher, is_open)
}

/// The optimum of a solved matcher with one pair kept together: only their former partners are
/// searched again. A player who is kept together with a bye has dropped out.
///
/// # Errors
/// [`OddSets`] when there is no perfect matching, or the two may not meet.
pub fn with(tariff: &Tariff, mut matcher: Matcher, [a, b]: [Place; 2]) -> Result<Matcher, OddSets> {
    let quick = Quick::new(tariff);
    if let Some(price) = quick.price(a as usize, b as usize) {
        matcher.force(a, b, price);
    } else {
        matcher.isolate(a);
    }
    let kept = [a as usize, b as usize];
    let is_open = |x: usize, y: usize| kept.contains(&x) == kept.contains(&y);
    complete(tariff, &quick, matcher, is_open)
}

/// The cheapest pair of players, by the price of every pair: what looking at all pairs once takes.
pub fn cheapest(tariff: &Tariff) -> Option<i128> {
    let (quick, players) = (Quick::new(tariff), tariff.field().players());
    let pairs = (0..players).flat_map(|a| (a + 1..players).map(move |b| (a, b)));
    pairs.filter_map(|(a, b)| quick.price(a, b)).min()
}

/// Solves, and adds absent open pairs that undercut the duals until there are none.
fn complete(
    tariff: &Tariff,
    quick: &Quick<'_>,
    mut matcher: Matcher,
    is_open: impl Fn(usize, usize) -> bool,
) -> Result<Matcher, OddSets> {
    let mut most = REPORTED;
    loop {
        if matcher.solve().is_err() {
            let price = |a: usize, b: usize| quick.price(a, b).filter(|_| is_open(a, b));
            return Matcher::optimum(tariff.places(), price);
        }
        let undercutting = undercutting(tariff, quick, &matcher, &is_open, most);
        if undercutting.is_empty() {
            return Ok(matcher);
        }
        if undercutting.len() > REPAIRED {
            matcher = matcher.anew(undercutting);
        } else {
            for (a, b, price) in undercutting {
                matcher.allow(a, b, price);
            }
        }
        most *= 2;
    }
}

/// Near and a few far pairs, every place with its neighbour, every bye with its cheapest players.
fn candidates(tariff: &Tariff, quick: &Quick<'_>) -> Graph {
    let (players, places) = (tariff.field().players(), tariff.places());
    let mut graph = Graph::new(places);
    let mut scatter = Scatter(1);
    let groups = groups(tariff);
    let mut near: Vec<(i128, usize)> = Vec::new();
    let mut across: Vec<(i128, usize)> = Vec::new();
    for a in 0..places {
        let window = if a < players {
            a.saturating_sub(WINDOW)..players.min(a + 1 + WINDOW)
        } else {
            0..players
        };
        near.clear();
        near.extend(
            window
                .filter(|&b| b != a)
                .filter_map(|b| Some((quick.price(a, b)?, b))),
        );
        if near.len() > NEAR {
            near.select_nth_unstable(NEAR);
            near.truncate(NEAR);
        }
        let next = (a + 1 < players).then_some(a + 1);
        let far = (0..FAR).map(|_| a + 1 + scatter.below(FAR_WINDOW));
        let more = next.into_iter().chain(far.filter(|&b| b < players));
        near.extend(more.filter_map(|b| Some((quick.price(a, b)?, b))));
        let group = groups.get(a).cloned().unwrap_or_default();
        if group.len() > WINDOW {
            let drawn = (0..DRAWN).map(|_| group.start + scatter.below(group.len()));
            across.clear();
            across.extend(
                drawn
                    .filter(|&b| b != a)
                    .filter_map(|b| Some((quick.price(a, b)?, b))),
            );
            across.sort_unstable();
            near.extend(across.iter().take(ACROSS));
        }
        for &(price, b) in &near {
            if !graph.joins(a as Place, b as Place) {
                graph.join(a as Place, b as Place, price);
            }
        }
    }
    graph
}

/// For each player's place the places of equal score.
fn groups(tariff: &Tariff) -> Vec<std::ops::Range<usize>> {
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
