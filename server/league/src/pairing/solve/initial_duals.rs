//! Duals to begin with, and the pairs that are already best under them.

use crate::pairing::round::certificate::Place;

use super::Matcher;
use super::node_id::NONE;

impl Matcher {
    /// Gives each place half its cheapest edge, then raises unmatched places one by one as far as
    /// their edges allow and pairs those that meet.
    pub(super) fn start(&mut self) {
        for place in 0..self.graph.places() as Place {
            let cheapest = self.graph.edges(place).map(|(_, cost)| cost).min();
            self.potential[place as usize] = cheapest.unwrap_or(0) / 2;
        }
        for place in 0..self.graph.places() as Place {
            if self.mate[place as usize] == NONE {
                self.raise(place);
            }
        }
    }

    fn raise(&mut self, place: Place) {
        let is_paired = |to: Place| self.mate[to as usize] != NONE;
        let room = |(to, cost)| (cost - self.potential[to as usize], is_paired(to), to);
        let Some((least, is_paired, to)) = self.graph.edges(place).map(room).min() else {
            return;
        };
        self.potential[place as usize] = least;
        if !is_paired {
            self.mate[place as usize] = to;
            self.mate[to as usize] = place;
        }
    }
}
