//! Initial duals by a greedy start, and the pairs that are already tight under them.

use crate::pairing::round::certificate::Vertex;

use super::Matcher;
use super::node_id::NONE;

impl Matcher {
    /// Gives each vertex half its cheapest edge, then raises unmatched vertices one by one as far as
    /// their edges allow and pairs those that meet.
    pub(super) fn init_duals(&mut self) {
        for vertex in 0..self.graph.vertex_count() as Vertex {
            let cheapest = self.graph.edges(vertex).map(|(_, cost)| cost).min();
            self.potential[vertex as usize] = cheapest.unwrap_or(0) / 2;
        }
        for vertex in 0..self.graph.vertex_count() as Vertex {
            if self.mate[vertex as usize] == NONE {
                self.raise(vertex);
            }
        }
    }

    fn raise(&mut self, vertex: Vertex) {
        let is_paired = |to: Vertex| self.mate[to as usize] != NONE;
        let room = |(to, cost)| (cost - self.potential[to as usize], is_paired(to), to);
        let Some((least, is_paired, to)) = self.graph.edges(vertex).map(room).min() else {
            return;
        };
        self.potential[vertex as usize] = least;
        if !is_paired {
            self.mate[vertex as usize] = to;
            self.mate[to as usize] = vertex;
        }
    }
}
