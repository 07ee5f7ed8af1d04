//! One alternating tree, from an unmatched place to the nearest other one.

use std::cmp::Reverse;

use crate::pairing::round::certificate::Place;

use super::node_id::{Item, NONE};
use super::tree::{Event, Label, NEVER, Turn};
use super::{Matcher, OddSets};

impl Matcher {
    /// Matches `root` with another unmatched place, at the least cost.
    pub(super) fn search(&mut self, root: Place) -> Result<(), OddSets> {
        let found = self.grow_from(root);
        self.settle(Label::Free);
        found
    }

    /// As [`Self::search`], but a tree that fails is out of the way of later searches.
    pub(super) fn search_and_freeze(&mut self, root: Place) -> Result<(), OddSets> {
        let found = self.grow_from(root);
        self.settle(if found.is_ok() {
            Label::Free
        } else {
            Label::Frozen
        });
        found
    }

    /// Takes the matched pair of a blossom away, where all else is matched: the blossoms around it
    /// shrink with the clock, and the search goes from one of the two to the other.
    pub(super) fn tear(&mut self, a: Place, b: Place) -> Result<(), OddSets> {
        self.tree.begin();
        let torn = self.blossoms.top(a);
        self.take_down(torn, Label::Torn([a, b]));
        self.take_partner(torn);
        let found = self.grow();
        self.settle(Label::Free);
        found
    }

    fn grow_from(&mut self, root: Place) -> Result<(), OddSets> {
        self.tree.begin();
        let top = self.blossoms.top(root);
        self.label(top, Label::Outer);
        self.scan(top);
        self.grow()
    }

    fn grow(&mut self) -> Result<(), OddSets> {
        while let Some(Reverse((time, event))) = self.tree.events.pop() {
            if time >= self.tree.end.0 {
                break;
            }
            match event {
                Event::Reach(from, to, turn) if self.is_still_free(to, turn) => {
                    self.tree.clock = time;
                    self.reach(from, to);
                }
                Event::Meet(a, b) if self.blossoms.top(a) != self.blossoms.top(b) => {
                    self.tree.clock = time;
                    self.shrink(a, b);
                }
                Event::Expand(item, turn) if self.is_still_inner(item, turn) => {
                    self.tree.clock = time;
                    self.expand(item);
                }
                _ => {}
            }
        }
        if self.tree.end == NEVER {
            return Err(self.stuck());
        }
        let (time, [from, to]) = self.tree.end;
        self.tree.clock = time;
        self.augment(from, to);
        Ok(())
    }

    pub(super) fn label(&mut self, item: Item, label: Label) {
        self.tree.mark(item, label);
        if label == Label::Outer {
            self.lift(item, -self.tree.clock);
        }
    }

    fn is_still_free(&self, place: Place, turn: Turn) -> bool {
        let top = self.blossoms.top(place) as usize;
        self.tree.label[top] == Label::Free && self.tree.turn[top] == turn
    }

    fn is_still_inner(&self, item: Item, turn: Turn) -> bool {
        self.blossoms.is_top(item)
            && matches!(
                self.tree.label[item as usize],
                Label::Inner(_) | Label::Torn(_)
            )
            && self.tree.turn[item as usize] == turn
    }

    /// How far the potentials of an outermost item are from what is written.
    pub(super) fn drift(&self, item: Item) -> i128 {
        match self.tree.label[item as usize] {
            Label::Outer => self.tree.clock,
            Label::Inner(_) | Label::Torn(_) => self.tree.since[item as usize] - self.tree.clock,
            Label::Free | Label::Frozen => 0,
        }
    }

    /// Writes the drift of an outermost item into its duals.
    pub(super) fn commit(&mut self, item: Item) {
        self.lift(item, self.drift(item));
        self.deepen(item);
        self.tree.since[item as usize] = self.tree.clock;
    }

    /// Raises what is written of the potentials of an outermost item.
    pub(super) fn lift(&mut self, item: Item, by: i128) {
        if by != 0 {
            for &place in self.blossoms.crowd(item) {
                self.potential[place as usize] += by;
                self.moved[place as usize] = true;
            }
        }
    }

    /// Writes how the depth of an outermost blossom changed since it was labelled.
    pub(super) fn deepen(&mut self, item: Item) {
        let passed = self.tree.clock - self.tree.since[item as usize];
        if self.blossoms.is_blossom(item) {
            self.blossoms.depth[item as usize] += match self.tree.label[item as usize] {
                Label::Outer => 2 * passed,
                Label::Inner(_) | Label::Torn(_) => -2 * passed,
                Label::Free | Label::Frozen => 0,
            };
        }
    }

    fn settle(&mut self, left: Label) {
        for item in std::mem::take(&mut self.tree.touched) {
            let standing = self.blossoms.is_top(item);
            if standing {
                self.commit(item);
            }
            let reached = self.tree.label[item as usize] != Label::Free;
            let label = if standing && reached {
                left
            } else {
                Label::Free
            };
            self.tree.label[item as usize] = label;
            self.tree.since[item as usize] = 0;
            self.tree.turn[item as usize] = 0;
            self.tree.reached[item as usize] = i128::MAX;
        }
    }

    /// Announces when the edges of an item that became outer get tight.
    pub(super) fn scan(&mut self, item: Item) {
        for at in 0..self.blossoms.crowd(item).len() {
            self.announce(self.blossoms.crowd(item)[at]);
        }
    }

    pub(super) fn announce(&mut self, from: Place) {
        let item = self.blossoms.top(from);
        let own = self.potential[from as usize] + self.drift(item);
        for (to, cost) in self.graph.edges(from) {
            let other = self.blossoms.top(to);
            let label = self.tree.label[other as usize];
            if label != Label::Free && (label != Label::Outer || other == item) {
                continue;
            }
            let slack = cost - own - self.potential[to as usize] - self.drift(other);
            match label {
                Label::Free if self.is_exposed(other) => self.tree.end(slack, [from, to]),
                Label::Free => self.tree.announce_reach(slack, other, [from, to]),
                _ => self.tree.push(slack / 2, Event::Meet(from, to)),
            }
        }
    }

    pub(super) fn is_exposed(&self, item: Item) -> bool {
        self.mate[self.blossoms.base(item) as usize] == NONE
    }

    /// Takes a free item and its partner into the tree.
    fn reach(&mut self, from: Place, to: Place) {
        let item = self.blossoms.top(to);
        self.take_down(item, Label::Inner([from, to]));
        self.take_partner(item);
    }

    fn take_partner(&mut self, inner: Item) {
        let partner = self.mate[self.blossoms.base(inner) as usize];
        let outer = self.blossoms.top(partner);
        self.label(outer, Label::Outer);
        self.scan(outer);
    }

    /// Takes an item whose potentials fall into the tree.
    pub(super) fn take_down(&mut self, item: Item, label: Label) {
        self.label(item, label);
        if self.blossoms.is_blossom(item) {
            let turn = self.tree.turn[item as usize];
            let wait = self.blossoms.depth[item as usize] / 2;
            self.tree.push(wait, Event::Expand(item, turn));
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
                Label::Outer => found.sets.push(self.blossoms.crowd(item).to_vec()),
                Label::Inner(_) => found.removed.push(item),
                Label::Torn(_) | Label::Free | Label::Frozen => {}
            }
        }
        found.removed.sort_unstable();
        found.removed.dedup();
        found.sets.sort_unstable();
        found.sets.dedup();
        found
    }
}
