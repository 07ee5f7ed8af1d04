//! Duals to begin with, and the pairs that are already best under them.

use super::{Matcher, NONE};

impl Matcher {
    /// Gives each place half its cheapest edge, then raises unmatched places one by one as far as
    /// their edges allow and pairs those that meet.
    pub(super) fn start(&mut self) {
        for (potential, edges) in self.potential.iter_mut().zip(&self.graph.edges) {
            *potential = edges.iter().map(|&(_, cost)| cost / 2).min().unwrap_or(0);
        }
        for place in 0..self.mate.len() {
            if self.mate[place] == NONE {
                self.raise(place);
            }
        }
    }

    fn raise(&mut self, place: usize) {
        let room = |&(to, cost): &(u32, i128)| (cost - self.potential[to as usize], to);
        let edges = &self.graph.edges[place];
        let Some((least, _)) = edges.iter().map(room).min() else {
            return;
        };
        let tight = edges.iter().map(room).filter(|&(room, _)| room == least);
        let partner = tight
            .map(|(_, to)| to)
            .find(|&to| self.mate[to as usize] == NONE);
        self.potential[place] = least;
        if let Some(partner) = partner {
            self.mate[place] = partner;
            self.mate[partner as usize] = place as u32;
        }
    }
}
