//! Branch and bound: the best matching that fits the hall and keeps later rounds playable, which a
//! plain minimum-cost matching cannot know.
//!
//! Best first: the open node with the lowest bound is looked at next. If its matching fits, nothing
//! cheaper is left anywhere. If not, its pairings are split in two, each is solved again, and the
//! split becomes a node of the certificate.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use crate::pairing::cost::PairCosts;
use crate::pairing::round::certificate::{Choice, Node, Vertex};
use crate::pairing::round::hall::{Capacity, NightSet};
use crate::pairing::solve::Matcher;

use super::look_ahead::{Feasibility, RoundsPlan, UnmetGraph};
use super::sparse;

/// Nodes of the search tree before the search gives up.
pub const MAX_NODES: usize = 20_000;

/// What the matching must satisfy besides its edge costs.
pub struct Constraints<'a> {
    pub costs: &'a PairCosts,
    pub capacity: &'a Capacity,
    /// The pairs that have not met, and the number of later rounds that must stay playable.
    pub unmet: Option<(&'a UnmetGraph<'a>, usize)>,
}

/// The best matching with its proof.
pub struct BestMatching {
    /// Pairs of vertices.
    pub pairs: Vec<[Vertex; 2]>,
    pub tree: Vec<Node>,
    /// The best matching without regard to the hall and later rounds.
    pub unlimited: Vec<[Vertex; 2]>,
    /// The matcher of the root, from which small changes are solved quickly.
    pub matcher: Matcher,
    /// A plan for the rounds that stay playable, where the look-ahead found one.
    pub plan: Option<RoundsPlan>,
}

/// Why there is no best matching.
pub enum BranchError {
    /// No matching fits, as this tree proves.
    Infeasible(Vec<Node>),
    /// [`MAX_NODES`] were not enough.
    NodeLimit,
}

/// The choices made on the way to a node, as constraints.
#[derive(Clone)]
struct NodeConstraints {
    nights: Vec<NightSet>,
    with: Vec<[Vertex; 2]>,
    without: Vec<[Vertex; 2]>,
}

struct OpenNode {
    pairs: Vec<[Vertex; 2]>,
    choices: NodeConstraints,
}

struct BranchAndBound<'a> {
    constraints: &'a Constraints<'a>,
    tree: Vec<Node>,
    open: Vec<Option<OpenNode>>,
    queue: BinaryHeap<Reverse<(i128, usize)>>,
}

impl Constraints<'_> {
    /// The best matching that fits and has none of the pairs `without`.
    ///
    /// # Errors
    /// [`BranchError`] when there is none, or none was proven.
    pub fn best(&self, without: Vec<[Vertex; 2]>) -> Result<BestMatching, BranchError> {
        let players = self.costs.participants().list.iter().map(|e| e.nights);
        let byes = (0..self.costs.byes()).map(|_| self.capacity.open_nights());
        let choices = NodeConstraints {
            nights: players.chain(byes).collect(),
            with: Vec::new(),
            without,
        };
        let mut search_tree = BranchAndBound {
            constraints: self,
            tree: Vec::new(),
            open: Vec::new(),
            queue: BinaryHeap::new(),
        };
        let (_, root) = search_tree.solve_node(choices);
        let Some(matcher) = root else {
            return Err(BranchError::Infeasible(search_tree.tree));
        };
        let unlimited = matcher.pairs();
        while let Some(Reverse((_, at))) = search_tree.queue.pop() {
            let Some(open) = search_tree.open[at].take() else {
                continue;
            };
            if let Some(nights) = self.find_crowded(&open.pairs, &open.choices) {
                search_tree.split_nights(at, &open, nights);
            } else {
                let plan = match self
                    .unmet
                    .map(|(f, n)| f.after(&open.pairs).can_play(n, None))
                {
                    Some(Feasibility::Infeasible) => {
                        search_tree.split_pairs(at, &open);
                        continue;
                    }
                    Some(Feasibility::Feasible(plan)) => Some(plan),
                    Some(Feasibility::Unknown) | None => None,
                };
                let OpenNode { pairs, .. } = open;
                return Ok(BestMatching {
                    pairs,
                    tree: search_tree.tree,
                    unlimited,
                    matcher,
                    plan,
                });
            }
            if search_tree.tree.len() > MAX_NODES {
                return Err(BranchError::NodeLimit);
            }
        }
        Err(BranchError::Infeasible(search_tree.tree))
    }

    /// Does every game of these pairs find a table?
    pub fn fits(&self, pairs: &[[Vertex; 2]]) -> bool {
        let nights = |vertex: Vertex| self.costs.participants().list[vertex as usize].nights;
        let games = self
            .games(pairs)
            .map(|[a, b]| nights(a).intersection(nights(b)));
        self.capacity
            .find_crowded(&games.collect::<Vec<_>>())
            .is_none()
    }

    fn find_crowded(&self, pairs: &[[Vertex; 2]], choices: &NodeConstraints) -> Option<NightSet> {
        let games: Vec<NightSet> = self
            .games(pairs)
            .map(|pair| choices.common_nights(pair))
            .collect();
        self.capacity.find_crowded(&games)
    }

    fn games<'p>(&self, pairs: &'p [[Vertex; 2]]) -> impl Iterator<Item = [Vertex; 2]> + 'p {
        let players = self.costs.participants().count();
        pairs
            .iter()
            .copied()
            .filter(move |pair| pair.iter().all(|&p| (p as usize) < players))
    }
}

impl NodeConstraints {
    fn common_nights(&self, [a, b]: [Vertex; 2]) -> NightSet {
        self.nights[a as usize].intersection(self.nights[b as usize])
    }

    fn edge_cost(&self, costs: &PairCosts, a: usize, b: usize) -> Option<i128> {
        let pair = [a as Vertex, b as Vertex];
        let excluded = self
            .with
            .iter()
            .any(|kept| *kept != pair && shares(*kept, pair));
        if excluded || self.common_nights(pair).is_empty() || self.without.contains(&pair) {
            return None;
        }
        costs.edge_cost(a, b)
    }
}

fn shares(one: [Vertex; 2], other: [Vertex; 2]) -> bool {
    one.iter().any(|vertex| other.contains(vertex))
}

impl BranchAndBound<'_> {
    /// Solves a node and enters it; the matcher comes back when it has a matching.
    fn solve_node(&mut self, choices: NodeConstraints) -> (usize, Option<Matcher>) {
        let at = self.tree.len();
        self.open.push(None);
        if let Some(nights) = self.find_overfull(&choices) {
            self.tree.push(Node::Crowded(nights));
            return (at, None);
        }
        let costs = self.constraints.costs;
        let solved = if choices.with.is_empty() && choices.without.is_empty() && at == 0 {
            sparse::optimum(costs)
        } else {
            Matcher::optimum(costs.vertex_count(), |a, b| choices.edge_cost(costs, a, b))
        };
        let matcher = match solved {
            Ok(matcher) => matcher,
            Err(found) => {
                self.tree.push(Node::Barrier(found.removed));
                return (at, None);
            }
        };
        let pairs = matcher.pairs();
        let priced = pairs
            .iter()
            .filter_map(|&[a, b]| costs.edge_cost(a as usize, b as usize));
        self.queue.push(Reverse((priced.sum(), at)));
        self.tree.push(Node::Bound(matcher.dual()));
        self.open[at] = Some(OpenNode { pairs, choices });
        (at, Some(matcher))
    }

    /// A set of nights to which more players are tied than its tables and byes can take.
    fn find_overfull(&self, choices: &NodeConstraints) -> Option<NightSet> {
        let (players, byes) = choices
            .nights
            .split_at(self.constraints.costs.participants().count());
        let too_many = |&(set, games): &(NightSet, usize)| {
            let tied = players
                .iter()
                .filter(|nights| nights.is_subset(set))
                .count();
            let free = byes
                .iter()
                .filter(|nights| !nights.intersection(set).is_empty())
                .count();
            tied > 2 * games + free
        };
        self.constraints
            .capacity
            .sets()
            .find(too_many)
            .map(|(set, _)| set)
    }

    /// Splits on whether a flexible vertex plays on the crowded nights.
    fn split_nights(&mut self, at: usize, open: &OpenNode, nights: NightSet) {
        let Some(vertex) = self.find_flexible(open, nights) else {
            self.tree[at] = Node::Crowded(nights);
            return;
        };
        let mut child = |kept: NightSet| {
            let mut choices = open.choices.clone();
            choices.nights[vertex as usize] = kept;
            self.solve_node(choices).0
        };
        let all = open.choices.nights[vertex as usize];
        let (inside, outside) = (
            child(all.intersection(nights)),
            child(all.difference(nights)),
        );
        self.tree[at] = Node::Split {
            choice: Choice::Nights(vertex, nights),
            yes: inside,
            no: outside,
        };
    }

    /// A vertex that can play inside and outside these nights: first of the games that crowd them,
    /// then a bye, then anyone.
    fn find_flexible(&self, open: &OpenNode, nights: NightSet) -> Option<Vertex> {
        let inside = |pair: &[Vertex; 2]| open.choices.common_nights(*pair).is_subset(nights);
        let crowding = self.constraints.games(&open.pairs).filter(inside).flatten();
        let players = self.constraints.costs.participants().count();
        let vertices = open.choices.nights.len();
        let byes = players..vertices;
        let rest = byes.chain(0..players).map(|vertex| vertex as Vertex);
        crowding.chain(rest).find(|&vertex| {
            let can = open.choices.nights[vertex as usize];
            !can.intersection(nights).is_empty() && !can.difference(nights).is_empty()
        })
    }

    /// Splits a matching that leads to a dead end from all others, pair by pair.
    fn split_pairs(&mut self, at: usize, open: &OpenNode) {
        let mut parent = at;
        let mut choices = open.choices.clone();
        for &vertices in open
            .pairs
            .iter()
            .filter(|pair| !open.choices.with.contains(pair))
        {
            let mut excluded = choices.clone();
            excluded.without.push(vertices);
            let without = self.solve_node(excluded).0;
            choices.with.push(vertices);
            let with = self.tree.len();
            self.tree.push(Node::DeadEnd);
            self.open.push(None);
            self.tree[parent] = Node::Split {
                choice: Choice::Paired(vertices),
                yes: with,
                no: without,
            };
            parent = with;
        }
        if parent == at {
            self.tree[at] = Node::DeadEnd;
        }
    }
}
