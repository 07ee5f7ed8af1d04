//! Pairs that cost less than the duals allow, found without looking at all pairs.
//!
//! Players with equal cards and the same odd sets around them form a bucket. Between two buckets
//! the untied price and the shared depth are the same for every pair of members, so one look tells
//! whether any pair could undercut: the highest potentials of both must exceed both. Whole score
//! groups are passed over in the same way; there every bucket first pays for its own float.

use std::collections::HashMap;

use super::certificate::Place;
use super::cost::Tariff;
use super::quick::{Card, Quick};
use super::solve::{Matcher, Nest};

/// Undercutting pairs that are reported of two buckets, each place once.
const REPORTED: usize = 2;

/// Players of one card in the same odd sets, highest potential first.
struct Bucket {
    members: Vec<(i128, usize)>,
}

/// Buckets of one score.
struct Group {
    score: i32,
    buckets: Vec<Bucket>,
    /// Buckets by their highest potential less what their float costs, highest first: against equal,
    /// lower and higher scores.
    reach: [Vec<(i128, usize)>; 3],
}

/// An absent pair and its price.
pub type Undercutting = (Place, Place, i128);

/// Some of the pairs that cost less than the duals allow; none when there are none. Of two scores
/// about `most` are reported: few often mend what a whole group lacks.
pub fn undercutting(
    tariff: &Tariff,
    quick: &Quick<'_>,
    matcher: &Matcher,
    is_open: impl Fn(usize, usize) -> bool,
    most: usize,
) -> Vec<Undercutting> {
    let (potentials, nest) = (matcher.potentials(), matcher.nest());
    let players = tariff.field().players();
    let mut found = Vec::new();
    for bye in players..tariff.places() {
        let undercuts = |&a: &usize| {
            let allowed = potentials[a] + potentials[bye] - nest.depth(a, bye);
            let price = quick.price(a, bye).filter(|price| 2 * price < allowed)?;
            is_open(a, bye).then_some((a as Place, bye as Place, price))
        };
        found.extend((0..players).filter_map(|a| undercuts(&a)).take(REPORTED));
    }
    let mut search = Search {
        quick,
        nest: &nest,
        is_open,
        most,
        found,
    };
    let groups = groups(tariff, quick, potentials, &nest);
    for (at, one) in groups.iter().enumerate() {
        search.between(one, one, 0, 0);
        for other in &groups[at + 1..] {
            search.between(one, other, 1, 2);
        }
    }
    search.found
}

struct Search<'a, F> {
    quick: &'a Quick<'a>,
    nest: &'a Nest,
    is_open: F,
    most: usize,
    found: Vec<Undercutting>,
}

impl<F: Fn(usize, usize) -> bool> Search<'_, F> {
    /// Looks at the buckets of two groups whose reaches together exceed the floor of their scores.
    fn between(&mut self, one: &Group, other: &Group, down: usize, up: usize) {
        let floor = 2 * self.quick.floor(one.score, other.score);
        let enough = self.found.len() + self.most;
        let (lower, upper) = (&one.reach[down], &other.reach[up]);
        let highest = upper.first().map_or(0, |&(reach, _)| reach);
        for &(own, a) in lower.iter().take_while(|(own, _)| own + highest > floor) {
            let near = upper.iter().take_while(|(theirs, _)| own + theirs > floor);
            for &(_, b) in near.filter(|&&(_, b)| down != up || a <= b) {
                self.look(&one.buckets[a], &other.buckets[b]);
                if self.found.len() >= enough {
                    return;
                }
            }
        }
    }

    fn look(&mut self, one: &Bucket, other: &Bucket) {
        let (high, a) = one.members[0];
        let (highest, b) = other.members[0];
        let same = a == b;
        let Some(untied) = self.quick.untied(a, b) else {
            return;
        };
        let least = 2 * untied;
        if high + highest <= least {
            return;
        }
        let least = least + self.nest.depth(a, b);
        if high + highest > least {
            self.report(one, other, same, untied, least);
        }
    }

    /// Reports the first pairs of members that undercut.
    fn report(&mut self, one: &Bucket, other: &Bucket, same: bool, untied: i128, least: i128) {
        let highest = other.members[0].0;
        let mut taken: Vec<usize> = Vec::new();
        for &(own, a) in one
            .members
            .iter()
            .take_while(|(own, _)| own + highest > least)
        {
            if taken.len() >= 2 * REPORTED {
                return;
            }
            if taken.contains(&a) {
                continue;
            }
            let near = other
                .members
                .iter()
                .take_while(|(theirs, _)| own + theirs > least);
            for &(theirs, b) in near {
                if (same && a == b) || taken.contains(&b) || !(self.is_open)(a.min(b), a.max(b)) {
                    continue;
                }
                let spare = own + theirs - least;
                let price = self.quick.tied(a, b, untied);
                if let Some(price) = price.filter(|price| 2 * (price - untied) < spare) {
                    self.found
                        .push((a.min(b) as Place, a.max(b) as Place, price));
                    taken.extend([a, b]);
                    break;
                }
            }
        }
    }
}

/// Players by score, and within a score by card and odd set.
fn groups(tariff: &Tariff, quick: &Quick<'_>, potentials: &[i128], nest: &Nest) -> Vec<Group> {
    let entrants = &tariff.field().entrants;
    let mut groups: Vec<Group> = Vec::new();
    let mut places = potentials.iter().copied().enumerate();
    for same in entrants.chunk_by(|a, b| a.score == b.score) {
        let mut numbers: HashMap<(Card, Option<u32>), usize> = HashMap::new();
        let mut buckets: Vec<Bucket> = Vec::new();
        for (place, potential) in places.by_ref().take(same.len()) {
            let key = (quick.card(place), nest.innermost(place));
            let at = *numbers.entry(key).or_insert(buckets.len());
            if at == buckets.len() {
                buckets.push(Bucket {
                    members: Vec::new(),
                });
            }
            buckets[at].members.push((potential, place));
        }
        groups.push(group(same[0].score, buckets, quick));
    }
    groups
}

fn group(score: i32, mut buckets: Vec<Bucket>, quick: &Quick<'_>) -> Group {
    let mut reach: [Vec<(i128, usize)>; 3] = Default::default();
    for (at, bucket) in buckets.iter_mut().enumerate() {
        bucket
            .members
            .sort_unstable_by_key(|&(potential, place)| (-potential, place));
        let (highest, place) = bucket.members[0];
        let [down, up] = quick.floats(place);
        for (list, float) in reach.iter_mut().zip([0, down, up]) {
            list.push((highest - 2 * float, at));
        }
    }
    for list in &mut reach {
        list.sort_unstable_by_key(|&(reach, at)| (-reach, at));
    }
    Group {
        score,
        buckets,
        reach,
    }
}
