//! Warm starts: edges removed from or added to a solved matching; only what breaks is searched again.

use crate::pairing::round::certificate::Vertex;

use super::Matcher;
use super::node_id::{NONE, NodeId};

impl Matcher {
    /// Takes an edge away. Its vertices may be left unmatched; [`Matcher::solve`] repairs.
    ///
    /// Every odd set stays whose cycle does without the edge.
    pub fn forbid(&mut self, a: Vertex, b: Vertex) {
        if !self.graph.remove_edge(a, b) {
            return;
        }
        let is_matched = self.mate[a as usize] == b;
        if self.blossoms.is_cycle_edge(a, b) {
            if is_matched && !self.mate.contains(&NONE) {
                // Whether there is another way, the next solve tells.
                self.search_without_pair(a, b).ok();
                return;
            }
            self.expand_common(a, b);
        }
        if is_matched {
            self.unmatch(a);
        }
    }

    /// Adds an edge that was not there; the duals are lowered where it would break them.
    pub fn allow(&mut self, a: Vertex, b: Vertex, cost: i128) {
        self.graph.add_edge(a, b, cost);
        let spent = self.potential[a as usize] + self.potential[b as usize];
        let over = spent - self.blossoms.shared_depth(a, b) - 2 * cost;
        if over > 0 {
            self.expand_common(a, b);
            self.lower(a, over);
        }
    }

    /// Begins again with more edges: quicker than repairing what many of them break.
    pub fn restart_with(mut self, edges: Vec<(Vertex, Vertex, i128)>) -> Self {
        for (a, b, cost) in edges {
            self.graph.add_edge(a, b, cost);
        }
        Self::new(self.graph)
    }

    /// Dissolves every odd set that holds both vertices.
    fn expand_common(&mut self, a: Vertex, b: Vertex) {
        while self.blossoms.top(a) == self.blossoms.top(b) {
            let top = self.blossoms.top(a);
            self.hand_down_depth(top, self.blossoms.depth[top as usize] / 2);
            self.blossoms.expand(top);
        }
    }

    /// Lowers the potential of a vertex, as far as possible together with all of its odd set.
    fn lower(&mut self, vertex: Vertex, mut by: i128) {
        loop {
            let top = self.blossoms.top(vertex);
            if !self.blossoms.is_blossom(top) {
                self.unmatch(vertex);
                self.potential[vertex as usize] -= by;
                self.moved[vertex as usize] = true;
                return;
            }
            let given = by.min(self.blossoms.depth[top as usize] / 2);
            self.hand_down_depth(top, given);
            by -= given;
            if by == 0 {
                return;
            }
            self.blossoms.expand(top);
        }
    }

    /// Hands depth of an outermost blossom to its vertices, twice as much as each is lowered by: edges
    /// inside keep their slack and edges outwards gain some, so the duals stay feasible and only the
    /// pair that leaves the blossom stops being tight.
    fn hand_down_depth(&mut self, top: NodeId, by: i128) {
        if by > 0 {
            self.unmatch(self.blossoms.base(top));
            self.blossoms.depth[top as usize] -= 2 * by;
            for &member in self.blossoms.vertices_in(top) {
                self.potential[member as usize] -= by;
                self.moved[member as usize] = true;
            }
        }
    }

    /// Leaves a vertex and its partner unmatched.
    fn unmatch(&mut self, vertex: Vertex) {
        let partner = std::mem::replace(&mut self.mate[vertex as usize], NONE);
        if partner != NONE {
            self.mate[partner as usize] = NONE;
        }
    }
}
