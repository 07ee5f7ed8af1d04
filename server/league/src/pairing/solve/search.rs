//! One alternating tree, from an unmatched place to the nearest other one.

use std::cmp::Reverse;

use super::blossom::Item;
use super::tree::{Event, Label};
use super::{Matcher, NONE, OddSets};
use crate::pairing::certificate::Place;

impl Matcher {
    /// Matches `root` with another unmatched place, at the least cost.
    pub(super) fn search(&mut self, root: Place) -> Result<(), OddSets> {
        let found = self.grow(root);
        self.settle(Label::Free);
        found
    }

    /// As [`Self::search`], but a tree that fails is out of the way of later searches.
    pub(super) fn search_and_freeze(&mut self, root: Place) -> Result<(), OddSets> {
        let found = self.grow(root);
        self.settle(if found.is_ok() {
            Label::Free
        } else {
            Label::Frozen
        });
        found
    }

    fn grow(&mut self, root: Place) -> Result<(), OddSets> {
        self.tree.clock = 0;
        self.tree.events.clear();
        let top = self.blossoms.top(root);
        self.label(top, Label::Outer);
        self.scan(top);
        while let Some(Reverse((time, event))) = self.tree.events.pop() {
            match event {
                Event::Reach(from, to, since) if self.is_free_since(to, since) => {
                    self.tree.clock = time;
                    if self.reach(from, to) {
                        return Ok(());
                    }
                }
                Event::Meet(a, b) if self.blossoms.top(a) != self.blossoms.top(b) => {
                    self.tree.clock = time;
                    self.shrink(a, b);
                }
                Event::Expand(item, since) if self.is_inner_since(item, since) => {
                    self.tree.clock = time;
                    self.expand(item);
                }
                _ => {}
            }
        }
        Err(self.stuck())
    }

    fn is_free_since(&self, place: Place, since: i128) -> bool {
        let top = self.blossoms.top(place) as usize;
        self.tree.label[top] == Label::Free && self.tree.since[top] == since
    }

    fn is_inner_since(&self, item: Item, since: i128) -> bool {
        self.blossoms.is_top(item)
            && matches!(self.tree.label[item as usize], Label::Inner(_))
            && self.tree.since[item as usize] == since
    }

    /// Announces when the edges of an item that became outer get tight.
    pub(super) fn scan(&mut self, item: Item) {
        for at in 0..self.blossoms.united(item).len() {
            self.announce(self.blossoms.united(item)[at]);
        }
    }

    fn announce(&mut self, from: Place) {
        let item = self.blossoms.top(from);
        let own = self.potential[from as usize] + self.drift(item);
        for &(to, cost) in &self.graph.edges[from as usize] {
            let other = self.blossoms.top(to);
            let label = self.tree.label[other as usize];
            if label != Label::Free && (label != Label::Outer || other == item) {
                continue;
            }
            let slack = cost - own - self.potential[to as usize] - self.drift(other);
            match label {
                Label::Free => {
                    let since = self.tree.since[other as usize];
                    self.tree.push(slack, Event::Reach(from, to, since));
                }
                _ => self.tree.push(slack / 2, Event::Meet(from, to)),
            }
        }
    }

    /// Takes a free item and its partner into the tree; true when there was no partner and the
    /// matching has grown.
    fn reach(&mut self, from: Place, to: Place) -> bool {
        let item = self.blossoms.top(to);
        let partner = self.mate[self.blossoms.base(item) as usize];
        if partner == NONE {
            self.augment(from, to);
            return true;
        }
        self.take_inner(item, [from, to]);
        let outer = self.blossoms.top(partner);
        self.label(outer, Label::Outer);
        self.scan(outer);
        false
    }

    pub(super) fn take_inner(&mut self, item: Item, entry: [Place; 2]) {
        self.label(item, Label::Inner(entry));
        if self.blossoms.is_blossom(item) {
            let since = self.tree.clock;
            let wait = self.blossoms.depth[item as usize] / 2;
            self.tree.push(wait, Event::Expand(item, since));
        }
    }

    /// Swaps matched and unmatched edges from the root to `from`, and pairs `from` with `to`.
    fn augment(&mut self, mut from: Place, mut to: Place) {
        let last = self.blossoms.top(to);
        self.blossoms.rotate(last, to, &mut self.mate);
        self.mate[to as usize] = from;
        loop {
            let outer = self.blossoms.top(from);
            let old = self.mate[self.blossoms.base(outer) as usize];
            self.blossoms.rotate(outer, from, &mut self.mate);
            self.mate[from as usize] = to;
            if old == NONE {
                return;
            }
            let inner = self.blossoms.top(old);
            let Label::Inner([next, entry]) = self.tree.label[inner as usize] else {
                return;
            };
            self.blossoms.rotate(inner, entry, &mut self.mate);
            self.mate[entry as usize] = next;
            (from, to) = (next, entry);
        }
    }

    /// No edge is left to grow over: inner places separate the outer odd sets from the rest.
    fn stuck(&self) -> OddSets {
        let mut found = OddSets {
            removed: Vec::new(),
            sets: Vec::new(),
        };
        for &item in &self.tree.touched {
            if !self.blossoms.is_top(item) {
                continue;
            }
            match self.tree.label[item as usize] {
                Label::Outer => found.sets.push(self.blossoms.members(item)),
                Label::Inner(_) => found.removed.push(item),
                Label::Free | Label::Frozen => {}
            }
        }
        found.removed.sort_unstable();
        found.removed.dedup();
        found.sets.sort_unstable();
        found.sets.dedup();
        found
    }
}
