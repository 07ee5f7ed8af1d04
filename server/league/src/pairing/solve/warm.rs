//! Changes to a solved matching: only what a change breaks is searched again.

use crate::pairing::round::certificate::Place;

use super::Matcher;
use super::node_id::{Item, NONE};

impl Matcher {
    /// Takes an edge away. Its places may be left unmatched; [`Matcher::solve`] repairs.
    ///
    /// Every odd set stays whose cycle does without the edge.
    pub fn forbid(&mut self, a: Place, b: Place) {
        if !self.graph.part(a, b) {
            return;
        }
        let is_matched = self.mate[a as usize] == b;
        if self.blossoms.links(a, b) {
            if is_matched && !self.mate.contains(&NONE) {
                // Whether there is another way, the next solve tells.
                self.tear(a, b).ok();
                return;
            }
            self.separate(a, b);
        }
        if is_matched {
            self.leave(a);
        }
    }

    /// Adds an edge that was not there; the duals are lowered where it would break them.
    pub fn allow(&mut self, a: Place, b: Place, cost: i128) {
        self.graph.join(a, b, cost);
        let spent = self.potential[a as usize] + self.potential[b as usize];
        let over = spent - self.blossoms.shared_depth(a, b) - 2 * cost;
        if over > 0 {
            self.separate(a, b);
            self.lower(a, over);
        }
    }

    /// Begins again with more edges: quicker than to mend what many of them break.
    pub fn anew_with(mut self, edges: Vec<(Place, Place, i128)>) -> Self {
        for (a, b, cost) in edges {
            self.graph.join(a, b, cost);
        }
        Self::new(self.graph)
    }

    /// Dissolves every odd set that holds both places.
    fn separate(&mut self, a: Place, b: Place) {
        while self.blossoms.top(a) == self.blossoms.top(b) {
            let top = self.blossoms.top(a);
            self.give(top, self.blossoms.depth[top as usize] / 2);
            self.blossoms.expand(top);
        }
    }

    /// Lowers the potential of a place, as far as possible together with all of its odd set.
    fn lower(&mut self, place: Place, mut by: i128) {
        loop {
            let top = self.blossoms.top(place);
            if !self.blossoms.is_blossom(top) {
                self.leave(place);
                self.potential[place as usize] -= by;
                self.moved[place as usize] = true;
                return;
            }
            let given = by.min(self.blossoms.depth[top as usize] / 2);
            self.give(top, given);
            by -= given;
            if by == 0 {
                return;
            }
            self.blossoms.expand(top);
        }
    }

    /// Hands depth of an outermost blossom to its places, twice as much as each is lowered by: edges
    /// inside keep their slack and edges outwards gain some, so the duals stay feasible and only the
    /// pair that leaves the blossom stops being tight.
    fn give(&mut self, top: Item, by: i128) {
        if by > 0 {
            self.leave(self.blossoms.base(top));
            self.blossoms.depth[top as usize] -= 2 * by;
            for &member in self.blossoms.crowd(top) {
                self.potential[member as usize] -= by;
                self.moved[member as usize] = true;
            }
        }
    }

    /// Leaves a place and its partner unmatched.
    fn leave(&mut self, place: Place) {
        let partner = std::mem::replace(&mut self.mate[place as usize], NONE);
        if partner != NONE {
            self.mate[partner as usize] = NONE;
        }
    }
}
