//! Absent pairs that cost less than the duals allow.
//!
//! Players stand in groups of one score and one odd set, in these in buckets of alike ones: the
//! highest potentials of two groups, then of two buckets, tell whether any of their pairs can
//! undercut.

use std::cmp::Reverse;
use std::collections::BTreeMap;
use std::ops::Range;

use crate::pairing::round::certificate::Place;
use crate::pairing::solve::Matcher;
use crate::pairing::solve::laminar::Nest;
use crate::pairing::solve::node_id::Item;

use super::cost_table::Quick;

/// Undercutting pairs that join for each place in one pass.
const JOINING: usize = 4;

/// Absent pairs that undercut the duals, the worst few of each place, with their prices. Only pairs
/// with a place that `moved` are looked at.
pub fn undercutting(
    quick: &Quick<'_>,
    matcher: &Matcher,
    moved: &[bool],
) -> Vec<(Place, Place, i128)> {
    let (potentials, nest) = (matcher.potentials(), matcher.nest());
    let shelf = |wanted| {
        let places = (0..quick.players()).filter(|&place| moved[place] == wanted);
        Shelf::new(quick, potentials, &nest, places)
    };
    let mut look = Look {
        quick,
        nest: &nest,
        found: BTreeMap::new(),
    };
    look.byes(potentials);
    let (moved, kept) = (shelf(true), shelf(false));
    look.within(&moved);
    look.between(&moved, &kept);
    look.pairs()
}

/// Places in groups, highest score first.
struct Shelf {
    groups: Vec<Group>,
    members: Vec<(i128, Place)>,
    highest: i128,
}

/// Buckets of one score whose deepest odd set is the same, that with the highest potential first.
struct Group {
    score: i32,
    deepest: Item,
    highest: i128,
    buckets: Vec<Bucket>,
}

/// Alike players whose innermost odd set is the same.
struct Bucket {
    highest: i128,
    innermost: Item,
    /// Of the shelf's members, that with the highest potential first.
    members: Range<usize>,
}

impl Shelf {
    fn new(
        quick: &Quick<'_>,
        potentials: &[i128],
        nest: &Nest,
        places: impl Iterator<Item = usize>,
    ) -> Self {
        let key = |at: usize| {
            let (deepest, innermost) = (nest.deepest(at), nest.innermost(at));
            (Reverse(quick.score(at)), deepest, quick.kind(at), innermost)
        };
        let mut sorted: Vec<_> = places.map(|at| (key(at), -potentials[at], at)).collect();
        sorted.sort_unstable();
        let mut groups: Vec<Group> = Vec::new();
        let mut from = 0;
        for alike in sorted.chunk_by(|one, other| one.0 == other.0) {
            let ((Reverse(score), deepest, _, innermost), lowest, _) = alike[0];
            let bucket = Bucket {
                highest: -lowest,
                innermost,
                members: from..from + alike.len(),
            };
            from += alike.len();
            let same = |group: &&mut Group| (group.score, group.deepest) == (score, deepest);
            match groups.last_mut().filter(same) {
                Some(group) => group.buckets.push(bucket),
                None => groups.push(Group {
                    score,
                    deepest,
                    highest: -lowest,
                    buckets: vec![bucket],
                }),
            }
        }
        for group in &mut groups {
            let order = |bucket: &Bucket| (-bucket.highest, bucket.members.start);
            group.buckets.sort_unstable_by_key(order);
            group.highest = group.buckets[0].highest;
        }
        Self {
            highest: groups.iter().map(|g| g.highest).max().unwrap_or(0),
            groups,
            members: sorted
                .into_iter()
                .map(|(_, low, at)| (-low, at as Place))
                .collect(),
        }
    }

    fn of(&self, bucket: &Bucket) -> &[(i128, Place)] {
        &self.members[bucket.members.clone()]
    }
}

/// A pass over the pairs that might undercut.
struct Look<'a> {
    quick: &'a Quick<'a>,
    nest: &'a Nest,
    /// The worst pairs of each place: slack, partner, price.
    found: BTreeMap<Place, Vec<(i128, Place, i128)>>,
}

impl Look<'_> {
    fn byes(&mut self, potentials: &[i128]) {
        for bye in self.quick.players()..potentials.len() {
            for a in 0..self.quick.players() {
                if let Some(price) = self.quick.price(a, bye) {
                    let sets = [a, bye].map(|place| self.nest.innermost(place));
                    let spent = potentials[a] + potentials[bye] - self.nest.depth(sets[0], sets[1]);
                    self.note(a as Place, bye as Place, 2 * price - spent, price);
                }
            }
        }
    }

    fn within(&mut self, shelf: &Shelf) {
        for (at, group) in shelf.groups.iter().enumerate() {
            for (from, one) in group.buckets.iter().enumerate() {
                self.alike(one, shelf);
                for other in &group.buckets[from + 1..] {
                    self.buckets((one, shelf), (other, shelf), 0);
                }
            }
            self.reached((group, shelf), shelf.groups[at + 1..].iter(), shelf);
        }
    }

    fn between(&mut self, moved: &Shelf, kept: &Shelf) {
        for group in &moved.groups {
            let higher = kept
                .groups
                .partition_point(|other| other.score > group.score);
            let (above, below) = kept.groups.split_at(higher);
            self.reached((group, moved), below.iter(), kept);
            self.reached((group, moved), above.iter().rev(), kept);
        }
    }

    /// Groups ever further off in score, as far as any potentials pay for the difference.
    fn reached<'g>(
        &mut self,
        (group, shelf): (&Group, &Shelf),
        others: impl Iterator<Item = &'g Group>,
        other_shelf: &Shelf,
    ) {
        for other in others {
            let floor = 2 * self.quick.floor(group.score, other.score);
            if group.highest + other_shelf.highest <= floor {
                return;
            }
            let shared = self.nest.depth(group.deepest, other.deepest);
            if group.highest + other.highest - shared <= floor {
                continue;
            }
            let paying = |one: i128| move |two: &&Bucket| one + two.highest > floor;
            for one in group.buckets.iter().take_while(paying(other.highest)) {
                for two in other.buckets.iter().take_while(paying(one.highest)) {
                    self.buckets((one, shelf), (two, other_shelf), floor);
                }
            }
        }
    }

    fn buckets(
        &mut self,
        (one, own): (&Bucket, &Shelf),
        (two, other): (&Bucket, &Shelf),
        floor: i128,
    ) {
        let Some((untied, bound)) =
            self.bound(one, two, own.of(one)[0].1, other.of(two)[0].1, floor)
        else {
            return;
        };
        let reaching = |from: i128| move |&&(to, _): &&(i128, Place)| from + to > bound;
        for &(high, a) in own.of(one).iter().take_while(reaching(two.highest)) {
            for &(low, b) in other.of(two).iter().take_while(reaching(high)) {
                self.pair(a, b, high + low - bound, untied);
            }
        }
    }

    fn alike(&mut self, bucket: &Bucket, shelf: &Shelf) {
        let members = shelf.of(bucket);
        let [(_, first), .., (_, last)] = *members else {
            return;
        };
        let Some((untied, bound)) = self.bound(bucket, bucket, first, last, 0) else {
            return;
        };
        for (at, &(high, a)) in members.iter().enumerate() {
            for &(low, b) in members[at + 1..]
                .iter()
                .take_while(|(low, _)| high + low > bound)
            {
                self.pair(a, b, high + low - bound, untied);
            }
        }
    }

    /// The price of an untied pair of two buckets and what its potentials must exceed, when any can.
    fn bound(
        &self,
        one: &Bucket,
        two: &Bucket,
        a: Place,
        b: Place,
        floor: i128,
    ) -> Option<(i128, i128)> {
        let shared = self.nest.depth(one.innermost, two.innermost);
        let highest = one.highest + two.highest - shared;
        if highest <= floor {
            return None;
        }
        let untied = self.quick.untied(a as usize, b as usize)?;
        (highest > 2 * untied).then_some((untied, 2 * untied + shared))
    }

    fn pair(&mut self, a: Place, b: Place, beyond: i128, untied: i128) {
        if let Some(price) = self.quick.tied(a as usize, b as usize, untied) {
            self.note(a.min(b), a.max(b), 2 * (price - untied) - beyond, price);
        }
    }

    fn note(&mut self, a: Place, b: Place, slack: i128, price: i128) {
        if slack >= 0 {
            return;
        }
        let worst = self.found.entry(a).or_default();
        let at = worst.partition_point(|&(other, ..)| other <= slack);
        if at < JOINING {
            worst.insert(at, (slack, b, price));
            worst.truncate(JOINING);
        }
    }

    fn pairs(self) -> Vec<(Place, Place, i128)> {
        let each = self.found.into_iter().flat_map(|(a, worst)| {
            let joined = move |(_, b, price)| (a, b, price);
            worst.into_iter().map(joined)
        });
        each.collect()
    }
}
