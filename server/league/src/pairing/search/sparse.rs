//! The optimum over all pairs, found on a few of them.
//!
//! Players stand in order of score, so good partners are near. The matching is solved on near and a
//! few random candidates; then every absent pair is priced with the duals. Pairs that undercut them
//! join the graph, and what they break is searched again, until none is left: then the duals are
//! feasible for all pairs and the matching is the optimum of the complete graph, which is never
//! stored. A repair begins with the published pairs instead, and only what a change broke is searched.

use crate::pairing::cost::Tariff;
use crate::pairing::round::certificate::Place;
use crate::pairing::solve::{Matcher, OddSets};

use super::candidates;
use super::cost_table::Quick;
use super::pricing::undercutting;

/// Fields up to this size are solved on all pairs at once.
pub const DENSE: usize = 64;

/// Where one place in so many has a pair that undercuts, starting again is quicker than mending.
const MANY: usize = 16;

/// The optimum over all pairs that have a price.
///
/// # Errors
/// [`OddSets`] when there is no perfect matching.
pub fn optimum(tariff: &Tariff) -> Result<Matcher, OddSets> {
    let quick = Quick::new(tariff);
    let repaired = candidates::around_published(&quick);
    if let Some(Ok(matcher)) = repaired.map(|graph| complete(&quick, Matcher::new(graph), &[])) {
        return Ok(matcher);
    }
    if quick.places() > DENSE {
        let matcher = Matcher::new(candidates::near_and_far(&quick));
        if let Ok(matcher) = complete(&quick, matcher, &[]) {
            return Ok(matcher);
        }
    }
    Matcher::optimum(quick.places(), |a, b| quick.price(a, b))
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
    let quick = Quick::new(tariff);
    for &[a, b] in pairs {
        matcher.forbid(a, b);
    }
    complete(&quick, matcher, pairs).or_else(|_| {
        let is_open = |a: usize, b: usize| !pairs.contains(&[a as Place, b as Place]);
        let price = |a: usize, b: usize| quick.price(a, b).filter(|_| is_open(a, b));
        Matcher::optimum(quick.places(), price)
    })
}

/// The cheapest pair of players, by the price of every pair: what looking at all pairs once takes.
pub fn cheapest(tariff: &Tariff) -> Option<i128> {
    let (quick, players) = (Quick::new(tariff), tariff.field().players());
    let pairs = (0..players).flat_map(|a| (a + 1..players).map(move |b| (a, b)));
    pairs.filter_map(|(a, b)| quick.price(a, b)).min()
}

/// Solves, and adds absent pairs that undercut the duals until there are none.
fn complete(
    quick: &Quick<'_>,
    mut matcher: Matcher,
    without: &[[Place; 2]],
) -> Result<Matcher, OddSets> {
    loop {
        matcher.solve()?;
        if matcher.is_whole() {
            return Ok(matcher);
        }
        let moved = matcher.take_moved();
        let mut undercutting = undercutting(quick, &matcher, &moved);
        undercutting.retain(|&(a, b, _)| !without.contains(&[a, b]));
        if undercutting.is_empty() {
            return Ok(matcher);
        }
        matcher = if undercutting.len() * MANY > quick.places() {
            matcher.anew_with(undercutting)
        } else {
            for (a, b, price) in undercutting {
                matcher.allow(a, b, price);
            }
            matcher
        };
    }
}
