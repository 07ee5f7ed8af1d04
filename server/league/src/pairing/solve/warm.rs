//! Changes to a solved matching: only what a change breaks is searched again.

use super::{Matcher, NONE};
use crate::pairing::certificate::Place;

impl Matcher {
    /// Takes an edge away. Its places may be left unmatched; [`Matcher::solve`] repairs.
    pub fn forbid(&mut self, a: Place, b: Place) {
        let within = self.blossoms.top(a) == self.blossoms.top(b);
        if self.graph.part(a, b) && (within || self.mate[a as usize] == b) {
            self.free(a);
        }
    }

    /// Adds an edge that was not there; the duals are lowered where it would break them.
    pub fn allow(&mut self, a: Place, b: Place, cost: i128) {
        self.free(a);
        self.graph.join(a, b, cost);
        let slack = 2 * cost - self.potential[a as usize] - self.potential[b as usize];
        if slack < 0 {
            self.potential[a as usize] += slack;
            self.moved[a as usize] = true;
        }
    }

    /// Begins again with more edges: quicker than to mend what many of them break.
    pub fn anew_with(mut self, edges: Vec<(Place, Place, i128)>) -> Self {
        for (a, b, cost) in edges {
            self.graph.join(a, b, cost);
        }
        Self::new(self.graph)
    }

    /// Leaves a place unmatched and outside every blossom.
    ///
    /// A blossom's depth is handed to its places in halves: edges inside keep their slack, edges
    /// outwards gain some, so the duals stay feasible and only the pair that leaves the blossom
    /// stops being tight.
    pub fn free(&mut self, place: Place) {
        loop {
            let top = self.blossoms.top(place);
            let base = self.blossoms.base(top);
            let partner = std::mem::replace(&mut self.mate[base as usize], NONE);
            if partner != NONE {
                self.mate[partner as usize] = NONE;
            }
            if !self.blossoms.is_blossom(top) {
                return;
            }
            let half = self.blossoms.depth[top as usize] / 2;
            for &member in self.blossoms.crowd(top) {
                self.potential[member as usize] -= half;
                self.moved[member as usize] = true;
            }
            self.blossoms.expand(top);
        }
    }
}
