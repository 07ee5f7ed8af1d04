//! The optimum against exhaustive search, and its dual against its own definition.

use proptest::prelude::*;

use crate::pairing::round::certificate::Dual;
use crate::pairing::solve::Matcher;
use crate::pairing::solve::graph::Graph;

/// Costs of the edges of a graph; `None` where there is no edge.
type Costs = Vec<Vec<Option<i128>>>;

/// On up to ten vertices.
fn graphs() -> impl Strategy<Value = Costs> {
    graphs_of(1..6)
}

fn graphs_of(halves: std::ops::Range<usize>) -> impl Strategy<Value = Costs> {
    let widths = prop_oneof![Just(2_u16), Just(5), Just(40), Just(1000)];
    (halves, widths, 0_u8..6).prop_flat_map(|(half, width, holes)| {
        let n = 2 * half;
        let cell = (0..width, 0..10_u8)
            .prop_map(move |(cost, hole)| (hole >= holes).then_some(i128::from(cost)));
        prop::collection::vec(prop::collection::vec(cell, n), n)
    })
}

fn cost(costs: &Costs, a: usize, b: usize) -> Option<i128> {
    costs[a.min(b)][a.max(b)]
}

/// Every perfect matching is tried.
fn exhaustive(costs: &Costs, free: u32) -> Option<i128> {
    if free == 0 {
        return Some(0);
    }
    let a = free.trailing_zeros() as usize;
    let rest = free & !(1 << a);
    let partners = (a + 1..costs.len()).filter(|b| rest & (1 << b) != 0);
    partners
        .filter_map(|b| Some(cost(costs, a, b)? + exhaustive(costs, rest & !(1 << b))?))
        .min()
}

fn solved(costs: &Costs) -> Option<Matcher> {
    let mut matcher = Matcher::new(Graph::complete(costs.len(), |a, b| cost(costs, a, b)));
    matcher.solve().is_ok().then_some(matcher)
}

fn total(costs: &Costs, matcher: &Matcher) -> i128 {
    let pairs = matcher.pairs();
    assert_eq!(2 * pairs.len(), costs.len());
    pairs
        .iter()
        .map(|&[a, b]| cost(costs, a as usize, b as usize).unwrap())
        .sum()
}

/// The dual pays for no edge more than it costs, and its odd sets are odd.
fn assert_feasible(costs: &Costs, dual: &Dual) {
    for (set, depth) in &dual.odd_sets {
        assert!(set.len() % 2 == 1 && *depth > 0);
    }
    let depth = |a: usize, b: usize| -> i128 {
        let holds = |set: &Vec<u32>| set.contains(&(a as u32)) && set.contains(&(b as u32));
        dual.odd_sets
            .iter()
            .filter(|(set, _)| holds(set))
            .map(|(_, depth)| depth)
            .sum()
    };
    for a in 0..costs.len() {
        for b in a + 1..costs.len() {
            if let Some(cost) = cost(costs, a, b) {
                let spent = dual.potentials[a] + dual.potentials[b] - depth(a, b);
                assert!(spent <= 2 * cost, "the edge {a}-{b} is overspent");
            }
        }
    }
}

/// The dual is feasible and its value is twice the cost: weak duality makes both optimal.
fn assert_proven(costs: &Costs, matcher: &Matcher) {
    let dual = matcher.dual();
    assert_feasible(costs, &dual);
    let depths = dual
        .odd_sets
        .iter()
        .map(|(set, depth)| depth * (set.len() as i128 / 2));
    let value = dual.potentials.iter().sum::<i128>() - depths.sum::<i128>();
    assert_eq!(value, 2 * total(costs, matcher));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(3000))]

    #[test]
    fn the_cheapest_matching_is_found_and_proven(costs in graphs()) {
        let best = exhaustive(&costs, (1 << costs.len()) - 1);
        let matcher = solved(&costs);
        prop_assert_eq!(best, matcher.as_ref().map(|m| total(&costs, m)));
        if let Some(matcher) = matcher {
            assert_proven(&costs, &matcher);
        }
    }

    #[test]
    fn a_graph_without_perfect_matching_has_too_many_odd_sets(costs in graphs()) {
        let n = costs.len();
        let mut matcher = Matcher::new(Graph::complete(n, |a, b| cost(&costs, a, b)));
        let Err(found) = matcher.solve() else { return Ok(()) };
        prop_assert!(found.sets.len() > found.removed.len());
        for (at, set) in found.sets.iter().enumerate() {
            prop_assert_eq!(set.len() % 2, 1);
            for &inside in set {
                for outside in (0..n as u32).filter(|v| !set.contains(v)) {
                    let joined = cost(&costs, inside as usize, outside as usize).is_some();
                    prop_assert!(!joined || found.removed.contains(&outside), "set {}", at);
                }
            }
        }
    }

    #[test]
    fn a_changed_matching_is_repaired_to_the_new_optimum(
        costs in graphs(),
        changes in prop::collection::vec((0_usize..10, 0_usize..10, 0..30_i128), 1..6),
    ) {
        let n = costs.len();
        let mut costs = costs;
        let Some(mut matcher) = solved(&costs) else { return Ok(()) };
        for (a, b, cost) in changes {
            let (a, b) = (a % n, b % n);
            if a == b { continue }
            let old = costs[a.min(b)][a.max(b)];
            if old.is_some() {
                matcher.forbid(a as u32, b as u32);
                costs[a.min(b)][a.max(b)] = None;
            } else {
                matcher.allow(a as u32, b as u32, cost);
                costs[a.min(b)][a.max(b)] = Some(cost);
            }
            let best = exhaustive(&costs, (1 << n) - 1);
            let repaired = matcher.solve().is_ok();
            prop_assert_eq!(best.is_some(), repaired);
            if !repaired { return Ok(()) }
            prop_assert_eq!(best, Some(total(&costs, &matcher)));
            assert_proven(&costs, &matcher);
        }
    }

    #[test]
    fn a_solved_matching_without_a_pair_is_as_good_as_one_solved_anew(
        costs in graphs_of(10..20),
        picks in prop::collection::vec((any::<prop::sample::Index>(), any::<bool>()), 1..8),
    ) {
        let (n, mut costs) = (costs.len(), costs);
        let Some(mut matcher) = solved(&costs) else { return Ok(()) };
        for (pick, is_paired) in picks {
            let [a, b] = if is_paired {
                matcher.pairs()[pick.index(n / 2)]
            } else {
                let (a, b) = (pick.index(n * n) / n, pick.index(n * n) % n);
                [a.min(b) as u32, a.max(b) as u32]
            };
            matcher.forbid(a, b);
            costs[a as usize][b as usize] = None;
            assert_feasible(&costs, &matcher.dual());
            let anew = solved(&costs);
            prop_assert_eq!(matcher.solve().is_ok(), anew.is_some());
            let Some(anew) = anew else { return Ok(()) };
            prop_assert_eq!(total(&costs, &matcher), total(&costs, &anew));
            assert_proven(&costs, &matcher);
        }
    }

    #[test]
    fn a_solved_matching_with_more_edges_is_as_good_as_one_solved_anew(
        costs in graphs_of(10..20),
        later in prop::collection::vec((any::<prop::sample::Index>(), 0..5_i128), 1..20),
    ) {
        let (n, mut costs) = (costs.len(), costs);
        let Some(mut matcher) = solved(&costs) else { return Ok(()) };
        for (pick, cost) in later {
            let (a, b) = (pick.index(n * n) / n, pick.index(n * n) % n);
            if a < b && costs[a][b].is_none() {
                matcher.allow(a as u32, b as u32, cost);
                costs[a][b] = Some(cost);
                assert_feasible(&costs, &matcher.dual());
            }
        }
        prop_assert!(matcher.solve().is_ok());
        prop_assert_eq!(total(&costs, &matcher), total(&costs, &solved(&costs).unwrap()));
        assert_proven(&costs, &matcher);
    }
}
