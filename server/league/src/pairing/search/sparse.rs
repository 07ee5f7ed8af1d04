//! The optimum over all pairs by sparse solve and pricing (column generation).
//!
//! Players stand in order of score, so good partners are near. The matching is solved on near and a
//! few random candidates; then every absent pair is priced with the duals. Pairs that undercut them
//! join the graph, and what they break is searched again, until none is left: then the duals are
//! feasible for all pairs and the matching is the optimum of the complete graph, which is never
//! stored. A repair begins with the published pairs instead, and only what a change broke is searched.

use crate::pairing::cost::PairCosts;
use crate::pairing::round::certificate::Vertex;
use crate::pairing::solve::{Matcher, OddSets};

use super::candidates;
use super::cost_table::CostTable;
use super::pricing::find_undercutting;

/// Up to so many vertices all pairs are solved at once.
pub const MAX_DENSE_VERTICES: usize = 64;

/// Where one vertex in so many has a pair that undercuts, starting again is quicker than repairing.
const RESTART_SHARE: usize = 16;

/// The optimum over all pairs that have a cost.
///
/// # Errors
/// [`OddSets`] when there is no perfect matching.
pub fn optimum(costs: &PairCosts) -> Result<Matcher, OddSets> {
    let cost_table = CostTable::new(costs);
    let repaired = candidates::around_published(&cost_table);
    if let Some(Ok(matcher)) =
        repaired.map(|graph| price_until_complete(&cost_table, Matcher::new(graph), &[]))
    {
        return Ok(matcher);
    }
    if cost_table.vertex_count() > MAX_DENSE_VERTICES {
        let matcher = Matcher::new(candidates::near_and_far(&cost_table));
        if let Ok(matcher) = price_until_complete(&cost_table, matcher, &[]) {
            return Ok(matcher);
        }
    }
    Matcher::optimum(cost_table.vertex_count(), |a, b| cost_table.edge_cost(a, b))
}

/// The optimum of a solved matcher without some of its pairs: only what they held together is
/// searched again.
///
/// # Errors
/// [`OddSets`] when there is no perfect matching.
pub fn optimum_without(
    costs: &PairCosts,
    mut matcher: Matcher,
    pairs: &[[Vertex; 2]],
) -> Result<Matcher, OddSets> {
    let cost_table = CostTable::new(costs);
    for &[a, b] in pairs {
        matcher.forbid(a, b);
    }
    price_until_complete(&cost_table, matcher, pairs).or_else(|_| {
        let is_open = |a: usize, b: usize| !pairs.contains(&[a as Vertex, b as Vertex]);
        let cost = |a: usize, b: usize| cost_table.edge_cost(a, b).filter(|_| is_open(a, b));
        Matcher::optimum(cost_table.vertex_count(), cost)
    })
}

/// The cost of the cheapest pair of players, by computing every one: the floor in the benchmarks.
pub fn cheapest_edge(costs: &PairCosts) -> Option<i128> {
    let (cost_table, players) = (CostTable::new(costs), costs.participants().count());
    let pairs = (0..players).flat_map(|a| (a + 1..players).map(move |b| (a, b)));
    pairs.filter_map(|(a, b)| cost_table.edge_cost(a, b)).min()
}

/// Solves, and adds absent pairs that undercut the duals until there are none.
fn price_until_complete(
    cost_table: &CostTable<'_>,
    mut matcher: Matcher,
    without: &[[Vertex; 2]],
) -> Result<Matcher, OddSets> {
    loop {
        matcher.solve()?;
        if matcher.is_complete_graph() {
            return Ok(matcher);
        }
        let moved = matcher.take_moved();
        let mut undercutting = find_undercutting(cost_table, &matcher, &moved);
        undercutting.retain(|&(a, b, _)| !without.contains(&[a, b]));
        if undercutting.is_empty() {
            return Ok(matcher);
        }
        matcher = if undercutting.len() * RESTART_SHARE > cost_table.vertex_count() {
            matcher.restart_with(undercutting)
        } else {
            for (a, b, cost) in undercutting {
                matcher.allow(a, b, cost);
            }
            matcher
        };
    }
}
