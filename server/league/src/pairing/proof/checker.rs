//! The checker of optimality proofs: walks a certificate's tree and recomputes every claim in it.
//!
//! A dual solution bounds by weak duality, a barrier excludes by Tutte's theorem, a crowded set of
//! nights by counting, a dead end by trying every continuation anew. Nothing here is shared with the solver: it
//! trusts what a pair costs ([`PairCosts`]) and how many games a set of nights holds ([`Capacity`]).

use std::collections::BTreeSet;

use crate::pairing::cost::PairCosts;
use crate::pairing::round::certificate::{BranchPath, Dual, Node, Vertex};
use crate::pairing::round::hall::{Capacity, NightSet};

use super::dead_end::is_dead_end;

/// The claim that no matching costs less than `least`, or that there is none at all.
pub struct OptimalityClaim<'a> {
    pub costs: &'a PairCosts,
    /// How many games a set of nights holds.
    pub capacity: &'a Capacity,
    /// The least cost.
    pub least: Option<i128>,
    /// Rounds to come that a dead end fails to leave playable.
    pub plan: usize,
}

impl OptimalityClaim<'_> {
    /// Does the tree show it?
    ///
    /// # Errors
    /// The node that does not hold.
    pub fn check(&self, tree: &[Node]) -> Result<(), usize> {
        let mut open = vec![(0, BranchPath::default())];
        let mut looked_at = 0..tree.len();
        while let Some((at, path)) = open.pop() {
            looked_at.next().ok_or(at)?;
            let holds = match tree.get(at).ok_or(at)? {
                Node::Bound(dual) => self.bound_holds(dual, &path).unwrap_or(false),
                Node::Barrier(removed) => self.barrier_holds(removed, &path),
                Node::Crowded(nights) => self.crowding_holds(*nights, &path),
                Node::DeadEnd => {
                    let played = path.pairs().collect();
                    is_dead_end(self.costs, self.capacity, self.plan, played)
                }
                &Node::Split { choice, yes, no } => {
                    let [taken, left] = [true, false].map(|taken| path.with(choice, taken));
                    open.extend([(yes, taken), (no, left)]);
                    yes > at && no > at
                }
            };
            holds.then_some(()).ok_or(at)?;
        }
        Ok(())
    }

    /// Nights that the choices leave to a vertex.
    fn nights(&self, vertex: usize, path: &BranchPath) -> NightSet {
        let player = self.costs.participants().list.get(vertex);
        let own = player.map_or(self.capacity.open_nights(), |player| player.nights);
        path.nights(vertex as Vertex, own)
    }

    /// The cost of a pair that the choices leave open.
    fn edge_cost(&self, a: usize, b: usize, path: &BranchPath) -> Option<i128> {
        let open = path.allows([a.min(b) as Vertex, a.max(b) as Vertex]);
        let common = self.nights(a, path).intersection(self.nights(b, path));
        let cost = self.costs.edge_cost(a, b);
        cost.filter(|_| open && !common.is_empty())
    }

    /// The dual is feasible and its value is at least the claimed; `None` when it is malformed or a
    /// sum outgrows 128 bits. In order of score a pair need not be looked up when no potential pays
    /// for the difference of the two scores.
    fn bound_holds(&self, dual: &Dual, path: &BranchPath) -> Option<bool> {
        let (potentials, mut around) = (
            &dual.potentials,
            vec![Vec::new(); self.costs.vertex_count()],
        );
        let sum = |sum: i128, own: &i128| sum.checked_add(*own);
        let mut value = potentials.iter().try_fold(0, sum)?;
        for (number, (set, depth)) in dual.odd_sets.iter().enumerate() {
            value = value.checked_sub(depth.checked_mul(set.len() as i128 / 2)?)?;
            for &vertex in set {
                let sets: &mut Vec<usize> = around.get_mut(vertex as usize)?;
                let fresh = sets.last() != Some(&number);
                (fresh && set.len() % 2 == 1 && *depth >= 0).then(|| sets.push(number))?;
            }
        }
        let value_is_enough = value >= self.least?.checked_mul(2)?;
        if potentials.len() != around.len() || !value_is_enough {
            return None;
        }
        let score = |&vertex: &usize| Some(self.costs.participants().list.get(vertex)?.score);
        let (highest, mut order) = (*potentials.iter().max()?, Vec::from_iter(0..around.len()));
        order.sort_by_key(score);
        for (at, &a) in order.iter().enumerate() {
            let highest = potentials[a].checked_add(highest)?;
            for &b in &order[at + 1..] {
                let floor = 2 * self.costs.min_edge_cost(a, b);
                if highest <= floor {
                    break;
                }
                let mut spent = potentials[a].checked_add(potentials[b])?;
                if spent <= floor {
                    continue;
                }
                let both = |set: &&usize| around[b].binary_search(set).is_ok();
                for &set in around[a].iter().filter(both) {
                    spent = spent.checked_sub(dual.odd_sets[set].1)?;
                }
                if spent > floor
                    && self
                        .edge_cost(a, b, path)
                        .is_some_and(|cost| spent > 2 * cost)
                {
                    return Some(false);
                }
            }
        }
        Some(true)
    }

    /// Without these vertices more odd components are left than vertices were taken (Tutte 1947).
    fn barrier_holds(&self, removed: &[Vertex], path: &BranchPath) -> bool {
        let taken: BTreeSet<usize> = removed.iter().map(|&vertex| vertex as usize).collect();
        let mut left: BTreeSet<usize> = (0..self.costs.vertex_count()).collect();
        left.retain(|vertex| !taken.contains(vertex));
        let mut odd = 0;
        while let Some(first) = left.pop_first() {
            let (mut size, mut reached) = (1, vec![first]);
            while let Some(a) = reached.pop() {
                let near = |&b: &usize| self.edge_cost(a, b, path).is_some();
                let near: Vec<usize> = left.iter().copied().filter(near).collect();
                left.retain(|b| !near.contains(b));
                size += near.len();
                reached.extend(near);
            }
            odd += size % 2;
        }
        odd > taken.len()
    }

    /// More players are tied to these nights than their tables and byes can take.
    fn crowding_holds(&self, nights: NightSet, path: &BranchPath) -> bool {
        let (players, vertices) = (self.costs.participants().count(), self.costs.vertex_count());
        let tied = (0..players).filter(|&player| self.nights(player, path).is_subset(nights));
        let byes = (players..vertices)
            .filter(|&bye| !self.nights(bye, path).intersection(nights).is_empty());
        let (tied, byes, mut sets) = (tied.count(), byes.count(), self.capacity.sets());
        sets.any(|(set, games)| set == nights && tied > 2 * games + byes)
    }
}
