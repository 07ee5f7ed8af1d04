//! Candidate edges: the sparse graph that a solve starts from.

use crate::pairing::round::certificate::Vertex;
use crate::pairing::solve::graph::Graph;

use super::cost_table::CostTable;

/// Vertices looked at on each side of a vertex, in order of score.
const WINDOW: usize = 48;
/// Cheapest of them that become candidates.
const NEAR_CANDIDATES: usize = 12;
/// Candidates drawn from further away, and how far at least.
const FAR_CANDIDATES: usize = 4;
const FAR_WINDOW: usize = 200;

/// A round counts as a repair when at most one vertex in so many has lost its published pair.
const REPAIR_SHARE: usize = 8;

/// Near and a few far pairs, every published one, every vertex with its neighbour, every bye with its
/// cheapest players.
///
/// Far pairs are drawn from the whole rest of a score group: where hundreds are equal, what one end
/// has too much of must reach the other.
pub fn near_and_far(cost_table: &CostTable<'_>) -> Graph {
    let (players, vertices) = (cost_table.player_count(), cost_table.vertex_count());
    let mut pairs = CandidatePairs {
        cost_table,
        priced: Vec::with_capacity(players * (NEAR_CANDIDATES + FAR_CANDIDATES + 2)),
    };
    let mut near = Vec::with_capacity(NEAR_CANDIDATES + 1);
    for a in 0..players {
        nearest(cost_table, a, &mut near);
        let priced = near
            .iter()
            .map(|&(cost, b)| (a as Vertex, b as Vertex, cost));
        pairs.priced.extend(priced);
    }
    for (a, b) in cost_table.published() {
        pairs.add(a, b);
    }
    let mut scatter = Lehmer(1);
    let mut end = 0;
    for a in 0..players {
        if end <= a {
            let equal = |&b: &usize| b < players && cost_table.score(b) == cost_table.score(a);
            end = (a..).take_while(equal).count() + a;
        }
        let draw_number =
            (0..FAR_CANDIDATES).map(|_| a + 1 + scatter.below(FAR_WINDOW.max(end - a)));
        for b in [a + 1]
            .into_iter()
            .chain(draw_number)
            .filter(|&b| b < players)
        {
            pairs.add(a, b);
        }
    }
    for bye in players..vertices {
        let all = (0..players).filter_map(|a| Some((cost_table.edge_cost(a, bye)?, a)));
        let priced = cheapest(all.collect()).into_iter();
        pairs
            .priced
            .extend(priced.map(|(cost, a)| (a as Vertex, bye as Vertex, cost)));
    }
    Graph::from_edges(vertices, &pairs.priced)
}

/// Pairs with their costs.
struct CandidatePairs<'a> {
    cost_table: &'a CostTable<'a>,
    priced: Vec<(Vertex, Vertex, i128)>,
}

impl CandidatePairs<'_> {
    fn add(&mut self, a: usize, b: usize) {
        if let Some(cost) = self.cost_table.edge_cost(a, b) {
            self.priced.push((a as Vertex, b as Vertex, cost));
        }
    }
}

/// The cheapest pairs of a vertex with those around it. What lies further off in score than the
/// worst of them costs at least as much.
fn nearest(cost_table: &CostTable<'_>, a: usize, kept: &mut Vec<(i128, usize)>) {
    kept.clear();
    let (mut above, mut below) = (true, true);
    for step in 1..=WINDOW {
        above &= a >= step;
        below &= a + step < cost_table.player_count();
        for (open, b) in [(&mut above, a.wrapping_sub(step)), (&mut below, a + step)] {
            let worst = if kept.len() < NEAR_CANDIDATES {
                i128::MAX
            } else {
                kept[NEAR_CANDIDATES - 1].0
            };
            if !*open || cost_table.cost_floor(cost_table.score(a), cost_table.score(b)) >= worst {
                *open = false;
                continue;
            }
            let base = cost_table.base_cost(a, b).filter(|&base| base < worst);
            let cost = base.and_then(|base| cost_table.with_relation(a, b, base));
            if let Some(cost) = cost.filter(|&cost| cost < worst) {
                let at = kept.partition_point(|&(other, _)| other <= cost);
                kept.insert(at, (cost, b));
                kept.truncate(NEAR_CANDIDATES);
            }
        }
        if !above && !below {
            break;
        }
    }
}

fn cheapest(mut all: Vec<(i128, usize)>) -> Vec<(i128, usize)> {
    if all.len() > NEAR_CANDIDATES {
        all.select_nth_unstable(NEAR_CANDIDATES);
        all.truncate(NEAR_CANDIDATES);
    }
    all
}

/// Published pairs and whatever the vertices without one can have, where those are few: a repair.
///
/// Every other pair is a change, so the published pairs are all at their best from the start.
pub fn around_published(cost_table: &CostTable<'_>) -> Option<Graph> {
    let mut pairs = CandidatePairs {
        cost_table,
        priced: Vec::new(),
    };
    for (a, b) in cost_table.published() {
        pairs.add(a, b);
    }
    let mut free = vec![true; cost_table.vertex_count()];
    for &(a, b, _) in &pairs.priced {
        (free[a as usize], free[b as usize]) = (false, false);
    }
    let alone: Vec<usize> = (0..free.len()).filter(|&vertex| free[vertex]).collect();
    if alone.len() * REPAIR_SHARE > free.len() {
        return None;
    }
    for &a in &alone {
        for b in (0..free.len()).filter(|&b| b > a || !free[b]) {
            pairs.add(a, b);
        }
    }
    Some(Graph::from_edges(cost_table.vertex_count(), &pairs.priced))
}

/// A pseudo-random generator (Lehmer generator of Park and Miller 1988) with a fixed seed: candidates
/// need spread, not chance.
struct Lehmer(u64);

impl Lehmer {
    fn below(&mut self, limit: usize) -> usize {
        self.0 = self.0 * 48_271 % 0x7fff_ffff;
        self.0 as usize % limit
    }
}
