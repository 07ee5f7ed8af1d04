//! Pricing, as in column generation: finds absent pairs with a negative reduced cost.
//!
//! Players stand in groups of one score and one odd set, and within these in buckets of one cost
//! class: the highest potentials of two groups, then of two buckets, tell whether any of their pairs
//! can undercut the duals, so most pairs are never looked at.

use std::cmp::Reverse;
use std::collections::BTreeMap;
use std::ops::Range;

use crate::pairing::round::certificate::Vertex;
use crate::pairing::solve::Matcher;
use crate::pairing::solve::laminar::LaminarFamily;
use crate::pairing::solve::node_id::NodeId;

use super::cost_table::CostTable;

/// Undercutting pairs that join for each vertex in one pass.
const MAX_PAIRS_PER_VERTEX: usize = 4;

/// Absent pairs that undercut the duals, the worst few of each vertex, with their costs. Only pairs
/// with a vertex that `moved` are looked at.
pub fn find_undercutting(
    cost_table: &CostTable<'_>,
    matcher: &Matcher,
    moved: &[bool],
) -> Vec<(Vertex, Vertex, i128)> {
    let (potentials, family) = (matcher.potentials(), matcher.laminar_family());
    let groups = |wanted| {
        let vertices = (0..cost_table.player_count()).filter(|&vertex| moved[vertex] == wanted);
        PriceGroups::new(cost_table, potentials, &family, vertices)
    };
    let mut search = PriceSearch {
        cost_table,
        family: &family,
        found: BTreeMap::new(),
    };
    search.check_byes(potentials);
    let (moved, kept) = (groups(true), groups(false));
    search.within(&moved);
    search.between(&moved, &kept);
    search.pairs()
}

/// Vertices in groups, highest score first.
struct PriceGroups {
    groups: Vec<Group>,
    members: Vec<(i128, Vertex)>,
    highest: i128,
}

/// Buckets of one score whose deepest odd set is the same, that with the highest potential first.
struct Group {
    score: i32,
    deepest: NodeId,
    highest: i128,
    buckets: Vec<Bucket>,
}

/// Players of one cost class whose innermost odd set is the same.
struct Bucket {
    highest: i128,
    innermost: NodeId,
    /// Of the groups' members, the one with the highest potential first.
    members: Range<usize>,
}

impl PriceGroups {
    fn new(
        cost_table: &CostTable<'_>,
        potentials: &[i128],
        family: &LaminarFamily,
        vertices: impl Iterator<Item = usize>,
    ) -> Self {
        let key = |at: usize| {
            let (deepest, innermost) = (family.deepest(at), family.innermost(at));
            (
                Reverse(cost_table.score(at)),
                deepest,
                cost_table.class(at),
                innermost,
            )
        };
        let mut sorted: Vec<_> = vertices.map(|at| (key(at), -potentials[at], at)).collect();
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
                .map(|(_, low, at)| (-low, at as Vertex))
                .collect(),
        }
    }

    fn members(&self, bucket: &Bucket) -> &[(i128, Vertex)] {
        &self.members[bucket.members.clone()]
    }
}

/// A pass over the pairs that might undercut.
struct PriceSearch<'a> {
    cost_table: &'a CostTable<'a>,
    family: &'a LaminarFamily,
    /// The worst pairs of each vertex: slack, partner, cost.
    found: BTreeMap<Vertex, Vec<(i128, Vertex, i128)>>,
}

impl PriceSearch<'_> {
    fn check_byes(&mut self, potentials: &[i128]) {
        for bye in self.cost_table.player_count()..potentials.len() {
            for a in 0..self.cost_table.player_count() {
                if let Some(cost) = self.cost_table.edge_cost(a, bye) {
                    let sets = [a, bye].map(|vertex| self.family.innermost(vertex));
                    let spent = potentials[a] + potentials[bye]
                        - self.family.shared_depth(sets[0], sets[1]);
                    self.record(a as Vertex, bye as Vertex, 2 * cost - spent, cost);
                }
            }
        }
    }

    fn within(&mut self, groups: &PriceGroups) {
        for (at, group) in groups.groups.iter().enumerate() {
            for (from, one) in group.buckets.iter().enumerate() {
                self.within_bucket(one, groups);
                for other in &group.buckets[from + 1..] {
                    self.between_buckets((one, groups), (other, groups), 0);
                }
            }
            self.scan_outwards((group, groups), groups.groups[at + 1..].iter(), groups);
        }
    }

    fn between(&mut self, moved: &PriceGroups, kept: &PriceGroups) {
        for group in &moved.groups {
            let higher = kept
                .groups
                .partition_point(|other| other.score > group.score);
            let (above, below) = kept.groups.split_at(higher);
            self.scan_outwards((group, moved), below.iter(), kept);
            self.scan_outwards((group, moved), above.iter().rev(), kept);
        }
    }

    /// Groups ever further off in score, as far as any potentials pay for the difference.
    fn scan_outwards<'g>(
        &mut self,
        (group, groups): (&Group, &PriceGroups),
        others: impl Iterator<Item = &'g Group>,
        other_groups: &PriceGroups,
    ) {
        for other in others {
            let floor = 2 * self.cost_table.cost_floor(group.score, other.score);
            if group.highest + other_groups.highest <= floor {
                return;
            }
            let shared = self.family.shared_depth(group.deepest, other.deepest);
            if group.highest + other.highest - shared <= floor {
                continue;
            }
            let paying = |one: i128| move |two: &&Bucket| one + two.highest > floor;
            for one in group.buckets.iter().take_while(paying(other.highest)) {
                for two in other.buckets.iter().take_while(paying(one.highest)) {
                    self.between_buckets((one, groups), (two, other_groups), floor);
                }
            }
        }
    }

    fn between_buckets(
        &mut self,
        (one, own): (&Bucket, &PriceGroups),
        (two, other): (&Bucket, &PriceGroups),
        floor: i128,
    ) {
        let Some((base, bound)) = self.bound(
            one,
            two,
            own.members(one)[0].1,
            other.members(two)[0].1,
            floor,
        ) else {
            return;
        };
        let reaching = |from: i128| move |&&(to, _): &&(i128, Vertex)| from + to > bound;
        for &(high, a) in own.members(one).iter().take_while(reaching(two.highest)) {
            for &(low, b) in other.members(two).iter().take_while(reaching(high)) {
                self.check_pair(a, b, high + low - bound, base);
            }
        }
    }

    fn within_bucket(&mut self, bucket: &Bucket, groups: &PriceGroups) {
        let members = groups.members(bucket);
        let [(_, first), .., (_, last)] = *members else {
            return;
        };
        let Some((base, bound)) = self.bound(bucket, bucket, first, last, 0) else {
            return;
        };
        for (at, &(high, a)) in members.iter().enumerate() {
            for &(low, b) in members[at + 1..]
                .iter()
                .take_while(|(low, _)| high + low > bound)
            {
                self.check_pair(a, b, high + low - bound, base);
            }
        }
    }

    /// The base cost of a pair of two buckets and what its potentials must exceed, when any can.
    fn bound(
        &self,
        one: &Bucket,
        two: &Bucket,
        a: Vertex,
        b: Vertex,
        floor: i128,
    ) -> Option<(i128, i128)> {
        let shared = self.family.shared_depth(one.innermost, two.innermost);
        let highest = one.highest + two.highest - shared;
        if highest <= floor {
            return None;
        }
        let base = self.cost_table.base_cost(a as usize, b as usize)?;
        (highest > 2 * base).then_some((base, 2 * base + shared))
    }

    fn check_pair(&mut self, a: Vertex, b: Vertex, beyond: i128, base: i128) {
        if let Some(cost) = self.cost_table.with_relation(a as usize, b as usize, base) {
            self.record(a.min(b), a.max(b), 2 * (cost - base) - beyond, cost);
        }
    }

    fn record(&mut self, a: Vertex, b: Vertex, slack: i128, cost: i128) {
        if slack >= 0 {
            return;
        }
        let worst = self.found.entry(a).or_default();
        let at = worst.partition_point(|&(other, ..)| other <= slack);
        if at < MAX_PAIRS_PER_VERTEX {
            worst.insert(at, (slack, b, cost));
            worst.truncate(MAX_PAIRS_PER_VERTEX);
        }
    }

    fn pairs(self) -> Vec<(Vertex, Vertex, i128)> {
        let each = self.found.into_iter().flat_map(|(a, worst)| {
            let joined = move |(_, b, cost)| (a, b, cost);
            worst.into_iter().map(joined)
        });
        each.collect()
    }
}
