//! Minimum-cost perfect matching in a general graph, exact, with its dual solution.
//!
//! Edmonds' blossom method (Edmonds 1965) as a shortest augmenting path search (Derigs 1981, from
//! memory): one alternating tree at a time grows from an unmatched vertex, the duals of everything
//! it reached move with one clock and are settled when it ends. A search touches only what its tree
//! reaches, so sparse graphs are solved locally, and a solved matching can be changed (`warm`)
//! and repaired without starting again. Costs are doubled once, which keeps every dual an integer:
//! along tight edges potentials share their parity, and depths are even.

mod augment;
mod blossom;
mod fractional;
pub mod graph;
mod initial_duals;
pub mod laminar;
pub mod node_id;
mod tree;
mod tree_search;
mod warm;

use super::round::certificate::{Dual, Vertex};

use blossom::Blossoms;
use graph::Graph;
use laminar::LaminarFamily;
use node_id::NONE;
use tree::Tree;

/// Why a graph has no perfect matching: without `removed` it has more odd components than removed
/// vertices; these are the odd sets that one search met.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OddSets {
    pub removed: Vec<Vertex>,
    /// Odd sets that are joined to nothing but removed vertices.
    pub sets: Vec<Vec<Vertex>>,
}

/// A matching on its way to the optimum, with its duals.
#[derive(Clone, Debug)]
pub struct Matcher {
    graph: Graph,
    potential: Vec<i128>,
    mate: Vec<Vertex>,
    blossoms: Blossoms,
    tree: Tree,
    /// Vertices whose potential, or the depth of an odd set around them, was written.
    moved: Vec<bool>,
    /// Whether every pair that has a cost is an edge.
    complete_graph: bool,
}

impl Matcher {
    /// The optimum over all pairs that have a cost.
    ///
    /// # Errors
    /// [`OddSets`] when there is no perfect matching.
    pub fn optimum(
        vertices: usize,
        cost: impl Fn(usize, usize) -> Option<i128>,
    ) -> Result<Self, OddSets> {
        let mut matcher = Self::new(Graph::complete(vertices, cost));
        matcher.complete_graph = true;
        matcher.solve()?;
        Ok(matcher)
    }

    /// Starting duals and the pairs that are free under them.
    pub fn new(graph: Graph) -> Self {
        let vertices = graph.vertex_count();
        let mut matcher = Self {
            potential: vec![0; vertices],
            mate: vec![NONE; vertices],
            blossoms: Blossoms::new(vertices),
            tree: Tree::new(vertices),
            moved: vec![true; vertices],
            complete_graph: false,
            graph,
        };
        matcher.init_duals();
        matcher.solve_fractional();
        matcher
    }

    /// Matches every vertex at the least cost.
    ///
    /// # Errors
    /// [`OddSets`] when there is no perfect matching.
    pub fn solve(&mut self) -> Result<(), OddSets> {
        for root in 0..self.mate.len() as Vertex {
            if self.mate[root as usize] == NONE {
                self.search(root)?;
            }
        }
        Ok(())
    }

    /// Matches as many vertices as possible and returns every odd set, all searches together: the
    /// number of sets less the number of removed vertices is the number of vertices left over.
    pub fn odd_sets(&mut self) -> OddSets {
        let mut all = OddSets {
            removed: Vec::new(),
            sets: Vec::new(),
        };
        for root in 0..self.mate.len() as Vertex {
            if self.mate[root as usize] == NONE
                && let Err(found) = self.search_and_freeze(root)
            {
                all.removed.extend(found.removed);
                all.sets.extend(found.sets);
            }
        }
        all
    }

    /// The pairs of the matching, lower vertex first.
    pub fn pairs(&self) -> Vec<[Vertex; 2]> {
        let pairs = (0..).zip(&self.mate).map(|(a, &b)| [a, b]);
        pairs.filter(|&[a, b]| a < b && b != NONE).collect()
    }

    /// Whether every pair that has a cost is an edge.
    pub fn is_complete_graph(&self) -> bool {
        self.complete_graph
    }

    /// The potential of each vertex.
    pub fn potentials(&self) -> &[i128] {
        &self.potential
    }

    /// The vertices whose duals were written since this was last asked. Pairs of the others have the
    /// slack they had.
    pub fn take_moved(&mut self) -> Vec<bool> {
        std::mem::replace(&mut self.moved, vec![false; self.mate.len()])
    }

    /// The laminar family of odd sets of positive depth.
    pub fn laminar_family(&self) -> LaminarFamily {
        self.blossoms.laminar_family()
    }

    pub fn dual(&self) -> Dual {
        Dual {
            potentials: self.potential.clone(),
            odd_sets: self.blossoms.deep_sets(),
        }
    }
}
