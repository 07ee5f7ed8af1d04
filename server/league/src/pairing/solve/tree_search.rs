//! The search of one alternating tree, from an unmatched vertex to the nearest other one.

use std::cmp::Reverse;

use crate::pairing::round::certificate::Vertex;

use super::node_id::{NONE, NodeId};
use super::tree::{Label, LabelStamp, NEVER, TreeEvent};
use super::{Matcher, OddSets};

impl Matcher {
    /// Matches `root` with another unmatched vertex, at the least cost.
    pub(super) fn search(&mut self, root: Vertex) -> Result<(), OddSets> {
        let found = self.grow_from(root);
        self.write_duals(Label::Free);
        found
    }

    /// As [`Self::search`], but a tree that fails is out of the way of later searches.
    pub(super) fn search_and_freeze(&mut self, root: Vertex) -> Result<(), OddSets> {
        let found = self.grow_from(root);
        self.write_duals(if found.is_ok() {
            Label::Free
        } else {
            Label::Frozen
        });
        found
    }

    /// Takes the matched pair of a blossom away, where all else is matched: the blossoms around it
    /// shrink with the clock, and the search goes from one of the two to the other.
    pub(super) fn search_without_pair(&mut self, a: Vertex, b: Vertex) -> Result<(), OddSets> {
        self.tree.reset();
        let blossom = self.blossoms.top(a);
        self.label_inner(blossom, Label::Removed([a, b]));
        self.take_partner(blossom);
        let found = self.grow();
        self.write_duals(Label::Free);
        found
    }

    fn grow_from(&mut self, root: Vertex) -> Result<(), OddSets> {
        self.tree.reset();
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
                TreeEvent::Reach(from, to, stamp) if self.is_still_free(to, stamp) => {
                    self.tree.clock = time;
                    self.reach(from, to);
                }
                TreeEvent::Meet(a, b) if self.blossoms.top(a) != self.blossoms.top(b) => {
                    self.tree.clock = time;
                    self.shrink(a, b);
                }
                TreeEvent::Expand(node, stamp) if self.is_still_inner(node, stamp) => {
                    self.tree.clock = time;
                    self.expand(node);
                }
                _ => {}
            }
        }
        if self.tree.end == NEVER {
            return Err(self.failed_odd_sets());
        }
        let (time, [from, to]) = self.tree.end;
        self.tree.clock = time;
        self.augment(from, to);
        Ok(())
    }

    pub(super) fn label(&mut self, node: NodeId, label: Label) {
        self.tree.set_label(node, label);
        if label == Label::Outer {
            self.raise_potentials(node, -self.tree.clock);
        }
    }

    fn is_still_free(&self, vertex: Vertex, stamp: LabelStamp) -> bool {
        let top = self.blossoms.top(vertex) as usize;
        self.tree.label[top] == Label::Free && self.tree.stamp[top] == stamp
    }

    fn is_still_inner(&self, node: NodeId, stamp: LabelStamp) -> bool {
        self.blossoms.is_top(node)
            && matches!(
                self.tree.label[node as usize],
                Label::Inner(_) | Label::Removed(_)
            )
            && self.tree.stamp[node as usize] == stamp
    }

    /// How far the potentials of an outermost node are from what is written.
    pub(super) fn drift(&self, node: NodeId) -> i128 {
        match self.tree.label[node as usize] {
            Label::Outer => self.tree.clock,
            Label::Inner(_) | Label::Removed(_) => self.tree.since[node as usize] - self.tree.clock,
            Label::Free | Label::Frozen => 0,
        }
    }

    /// Writes the drift of an outermost node into its duals.
    pub(super) fn write_drift(&mut self, node: NodeId) {
        self.raise_potentials(node, self.drift(node));
        self.update_depth(node);
        self.tree.since[node as usize] = self.tree.clock;
    }

    /// Raises what is written of the potentials of an outermost node.
    pub(super) fn raise_potentials(&mut self, node: NodeId, by: i128) {
        if by != 0 {
            for &vertex in self.blossoms.vertices_in(node) {
                self.potential[vertex as usize] += by;
                self.moved[vertex as usize] = true;
            }
        }
    }

    /// Writes how the depth of an outermost blossom changed since it was labelled.
    pub(super) fn update_depth(&mut self, node: NodeId) {
        let passed = self.tree.clock - self.tree.since[node as usize];
        if self.blossoms.is_blossom(node) {
            self.blossoms.depth[node as usize] += match self.tree.label[node as usize] {
                Label::Outer => 2 * passed,
                Label::Inner(_) | Label::Removed(_) => -2 * passed,
                Label::Free | Label::Frozen => 0,
            };
        }
    }

    fn write_duals(&mut self, left: Label) {
        for node in std::mem::take(&mut self.tree.touched) {
            let standing = self.blossoms.is_top(node);
            if standing {
                self.write_drift(node);
            }
            let reached = self.tree.label[node as usize] != Label::Free;
            let label = if standing && reached {
                left
            } else {
                Label::Free
            };
            self.tree.label[node as usize] = label;
            self.tree.since[node as usize] = 0;
            self.tree.stamp[node as usize] = 0;
            self.tree.reached[node as usize] = i128::MAX;
        }
    }

    /// Announces when the edges of a node that became outer get tight.
    pub(super) fn scan(&mut self, node: NodeId) {
        for at in 0..self.blossoms.vertices_in(node).len() {
            self.announce_edges(self.blossoms.vertices_in(node)[at]);
        }
    }

    pub(super) fn announce_edges(&mut self, from: Vertex) {
        let node = self.blossoms.top(from);
        let own = self.potential[from as usize] + self.drift(node);
        for (to, cost) in self.graph.edges(from) {
            let other = self.blossoms.top(to);
            let label = self.tree.label[other as usize];
            if label != Label::Free && (label != Label::Outer || other == node) {
                continue;
            }
            let slack = cost - own - self.potential[to as usize] - self.drift(other);
            match label {
                Label::Free if self.is_exposed(other) => self.tree.offer_end(slack, [from, to]),
                Label::Free => self.tree.announce_reach(slack, other, [from, to]),
                _ => self.tree.push(slack / 2, TreeEvent::Meet(from, to)),
            }
        }
    }

    pub(super) fn is_exposed(&self, node: NodeId) -> bool {
        self.mate[self.blossoms.base(node) as usize] == NONE
    }

    /// Takes a free node and its partner into the tree.
    fn reach(&mut self, from: Vertex, to: Vertex) {
        let node = self.blossoms.top(to);
        self.label_inner(node, Label::Inner([from, to]));
        self.take_partner(node);
    }

    fn take_partner(&mut self, inner: NodeId) {
        let partner = self.mate[self.blossoms.base(inner) as usize];
        let outer = self.blossoms.top(partner);
        self.label(outer, Label::Outer);
        self.scan(outer);
    }

    /// Takes a node whose potentials fall into the tree.
    pub(super) fn label_inner(&mut self, node: NodeId, label: Label) {
        self.label(node, label);
        if self.blossoms.is_blossom(node) {
            let stamp = self.tree.stamp[node as usize];
            let wait = self.blossoms.depth[node as usize] / 2;
            self.tree.push(wait, TreeEvent::Expand(node, stamp));
        }
    }

    /// No edge is left to grow over: inner vertices separate the outer odd sets from the rest.
    fn failed_odd_sets(&self) -> OddSets {
        let mut found = OddSets {
            removed: Vec::new(),
            sets: Vec::new(),
        };
        for &node in &self.tree.touched {
            if !self.blossoms.is_top(node) {
                continue;
            }
            match self.tree.label[node as usize] {
                Label::Outer => found.sets.push(self.blossoms.vertices_in(node).to_vec()),
                Label::Inner(_) => found.removed.push(node),
                Label::Removed(_) | Label::Free | Label::Frozen => {}
            }
        }
        found.removed.sort_unstable();
        found.removed.dedup();
        found.sets.sort_unstable();
        found.sets.dedup();
        found
    }
}
