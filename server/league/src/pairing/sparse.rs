//! The optimum over all pairs, found on a few of them.
//!
//! Players stand in order of score, so good partners are near. The matching is solved on near and a
//! few random candidates; then every absent pair is priced with the duals. Pairs that undercut them
//! join the graph, and what they break is searched again, until none is left: then the duals are
//! feasible for all pairs and the matching is the optimum of the complete graph, which is never
//! stored. Whole score groups are passed over where even equal wishes could not undercut.

use std::collections::BTreeMap;

use super::certificate::Place;
use super::cost::Tariff;
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
/// Undercutting pairs that join for each place in one pass.
const JOINING: usize = 4;

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
    complete(tariff, &quick, matcher, Vec::new(), &[])
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
    let priced = matcher.potentials().to_vec();
    for &[a, b] in pairs {
        matcher.forbid(a, b);
    }
    complete(tariff, &Quick::new(tariff), matcher, priced, pairs)
}

/// The cheapest pair of players, by the price of every pair: what looking at all pairs once takes.
pub fn cheapest(tariff: &Tariff) -> Option<i128> {
    let (quick, players) = (Quick::new(tariff), tariff.field().players());
    let pairs = (0..players).flat_map(|a| (a + 1..players).map(move |b| (a, b)));
    pairs.filter_map(|(a, b)| quick.price(a, b)).min()
}

/// Solves, and adds absent pairs that undercut the duals until there are none.
fn complete(
    tariff: &Tariff,
    quick: &Quick<'_>,
    mut matcher: Matcher,
    mut priced: Vec<i128>,
    without: &[[Place; 2]],
) -> Result<Matcher, OddSets> {
    let is_open = |a: usize, b: usize| !without.contains(&[a as Place, b as Place]);
    loop {
        if matcher.solve().is_err() {
            let price = |a: usize, b: usize| quick.price(a, b).filter(|_| is_open(a, b));
            return Matcher::optimum(tariff.places(), price);
        }
        let mut undercutting = undercutting(tariff, quick, &matcher, &priced);
        undercutting.retain(|&(a, b, _)| is_open(a as usize, b as usize));
        if undercutting.is_empty() {
            return Ok(matcher);
        }
        priced = matcher.potentials().to_vec();
        for (a, b, price) in undercutting {
            matcher.allow(a, b, price);
        }
    }
}

/// Near and a few far pairs, every place with its neighbour, every bye with its cheapest players.
fn candidates(tariff: &Tariff, quick: &Quick<'_>) -> Graph {
    let (players, places) = (tariff.field().players(), tariff.places());
    let mut chosen: Vec<(Place, Place, i128)> = Vec::with_capacity(places * (NEAR + FAR));
    let mut near: Vec<Vec<(i128, usize)>> = vec![Vec::with_capacity(2 * WINDOW); players];
    for a in 0..players {
        for b in a + 1..players.min(a + 1 + WINDOW) {
            if let Some(price) = quick.price(a, b) {
                near[a].push((price, b));
                near[b].push((price, a));
                if b == a + 1 {
                    chosen.push((a as Place, b as Place, price));
                }
            }
        }
    }
    for bye in players..places {
        near.push(
            (0..players)
                .filter_map(|a| Some((quick.price(a, bye)?, a)))
                .collect(),
        );
    }
    let mut scatter = Scatter(1);
    for (a, near) in near.iter_mut().enumerate() {
        if near.len() > NEAR {
            near.select_nth_unstable(NEAR);
            near.truncate(NEAR);
        }
        for &(price, b) in near.iter() {
            chosen.push((a.min(b) as Place, a.max(b) as Place, price));
        }
        for b in (0..FAR)
            .map(|_| a + 1 + scatter.below(FAR_WINDOW))
            .filter(|&b| b < players)
        {
            if let Some(price) = quick.price(a, b) {
                chosen.push((a as Place, b as Place, price));
            }
        }
    }
    chosen.sort_unstable();
    chosen.dedup();
    let mut graph = Graph::new(places);
    for (a, b, price) in chosen {
        graph.join(a, b, price);
    }
    graph
}

/// Places of one score with their potentials, highest first.
struct Group {
    score: i32,
    /// Places whose potential changed since pairs were last priced, and the others.
    moved: Vec<(i128, usize)>,
    kept: Vec<(i128, usize)>,
}

/// Absent pairs that cost less than the duals allow, the worst few of each place.
///
/// A pair of places that both kept the potential they were last priced with keeps its slack too:
/// the depth of an odd set moves only with the potentials of all its places.
fn undercutting(
    tariff: &Tariff,
    quick: &Quick<'_>,
    matcher: &Matcher,
    priced: &[i128],
) -> Vec<(Place, Place, i128)> {
    let potentials = matcher.potentials();
    let nest = matcher.nest();
    let mut found = Found(BTreeMap::new());
    let players = tariff.field().players();
    for bye in players..tariff.places() {
        for a in 0..players {
            let allowed = potentials[a] + potentials[bye] - nest.depth(a, bye);
            if let Some(price) = quick.price(a, bye).filter(|price| 2 * price < allowed) {
                found.note(a, bye, 2 * price - allowed, price);
            }
        }
    }
    let mut look = |a: usize, b: usize, reach: i128| {
        let Some(untied) = quick.untied(a, b).filter(|untied| 2 * untied < reach) else {
            return;
        };
        let allowed = reach - nest.depth(a, b);
        if 2 * untied < allowed
            && let Some(price) = quick.tied(a, b, untied)
            && 2 * price < allowed
        {
            found.note(a.min(b), a.max(b), 2 * price - allowed, price);
        }
    };
    let groups = groups(tariff, potentials, priced);
    for (at, one) in groups.iter().enumerate() {
        for other in &groups[at..] {
            let floor = 2 * quick.floor(one.score, other.score);
            if one.score == other.score {
                cross(&one.moved, &one.moved, floor, |a, b, reach| {
                    if a < b {
                        look(a, b, reach);
                    }
                });
                cross(&one.moved, &one.kept, floor, &mut look);
            } else {
                cross(&one.moved, &other.moved, floor, &mut look);
                cross(&one.moved, &other.kept, floor, &mut look);
                cross(&one.kept, &other.moved, floor, &mut look);
            }
        }
    }
    found.pairs()
}

/// Looks at the pairs of two lists whose potentials together exceed a floor; both lists fall.
fn cross(
    one: &[(i128, usize)],
    other: &[(i128, usize)],
    floor: i128,
    mut look: impl FnMut(usize, usize, i128),
) {
    let highest = other.first().map_or(0, |&(potential, _)| potential);
    for &(own, a) in one.iter().take_while(|(own, _)| own + highest > floor) {
        for &(theirs, b) in other.iter().take_while(|(theirs, _)| own + theirs > floor) {
            look(a, b, own + theirs);
        }
    }
}

fn groups(tariff: &Tariff, potentials: &[i128], priced: &[i128]) -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    for (place, entrant) in tariff.field().entrants.iter().enumerate() {
        if groups
            .last()
            .is_none_or(|group| group.score != entrant.score)
        {
            groups.push(Group {
                score: entrant.score,
                moved: Vec::new(),
                kept: Vec::new(),
            });
        }
        let potential = potentials[place];
        let moved = priced.get(place) != Some(&potential);
        if let Some(group) = groups.last_mut() {
            let list = if moved {
                &mut group.moved
            } else {
                &mut group.kept
            };
            list.push((potential, place));
        }
    }
    for list in groups
        .iter_mut()
        .flat_map(|group| [&mut group.moved, &mut group.kept])
    {
        list.sort_unstable_by_key(|&(potential, place)| (-potential, place));
    }
    groups
}

/// The worst undercutting pairs of each place.
struct Found(BTreeMap<usize, Vec<(i128, usize, i128)>>);

impl Found {
    fn note(&mut self, a: usize, b: usize, slack: i128, price: i128) {
        let worst = self.0.entry(a).or_default();
        let at = worst.partition_point(|&(other, ..)| other <= slack);
        if at < JOINING {
            worst.insert(at, (slack, b, price));
            worst.truncate(JOINING);
        }
    }

    fn pairs(self) -> Vec<(Place, Place, i128)> {
        let each = self.0.into_iter().flat_map(|(a, worst)| {
            worst
                .into_iter()
                .map(move |(_, b, price)| (a as Place, b as Place, price))
        });
        each.collect()
    }
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
