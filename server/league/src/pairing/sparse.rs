//! The optimum over all pairs, found on a few of them.
//!
//! Players stand in order of score, so good partners are near. The matching is solved on near and a
//! few random candidates; then every absent pair is priced with the duals. Pairs that undercut them
//! join the graph, and what they break is searched again, until none is left: then the duals are
//! feasible for all pairs and the matching is the optimum of the complete graph, which is never
//! stored.

use super::candidates::candidates;
use super::certificate::Place;
use super::cost::Tariff;
use super::pricing::undercutting;
use super::quick::Quick;
use super::solve::{Matcher, OddSets};

/// Fields up to this size are solved on all pairs at once.
pub const DENSE: usize = 64;

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
