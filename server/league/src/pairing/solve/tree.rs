//! The alternating tree of a search, and its queue of events.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use crate::pairing::round::certificate::Vertex;

use super::node_id::{NONE, NodeId};

/// Where an outermost node stands in the tree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Label {
    /// Not reached.
    Free,
    /// At even distance from the root; its potentials rise with the clock and are kept less the
    /// clock, so that nothing is written when outer nodes unite.
    Outer,
    /// At odd distance, reached over this edge from an outer vertex; its potentials fall.
    Inner([Vertex; 2]),
    /// Holds both of a pair that is taken away, and is dissolved as if it had been reached at the
    /// first of them.
    Removed([Vertex; 2]),
    /// Part of a tree that cannot be augmented: as if it were not there.
    Frozen,
}

/// When in a search a node was labelled: no two labels have the same stamp, so that no event queued
/// for a blossom is taken for one of its children. 0 for a node that the search has not come to.
pub type LabelStamp = u32;

/// What happens next, in the order it is preferred among equals.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum TreeEvent {
    /// The edge from an outer vertex to one whose node has borne this label becomes tight.
    Reach(Vertex, Vertex, LabelStamp),
    /// The depth of an inner blossom that has borne this label becomes zero.
    Expand(NodeId, LabelStamp),
    /// The edge between two outer vertices becomes tight.
    Meet(Vertex, Vertex),
}

/// The tree of the search under way.
#[derive(Clone, Debug)]
pub struct Tree {
    pub clock: i128,
    pub label: Vec<Label>,
    pub since: Vec<i128>,
    pub stamp: Vec<LabelStamp>,
    stamps: LabelStamp,
    /// When each free node is reached, so far as is announced.
    pub reached: Vec<i128>,
    pub touched: Vec<NodeId>,
    pub events: BinaryHeap<Reverse<(i128, TreeEvent)>>,
    /// When the tree reaches an unmatched node, so far as is known, and over which edge: nothing
    /// later need be known.
    pub end: (i128, [Vertex; 2]),
}

/// No edge ends the tree.
pub const NEVER: (i128, [Vertex; 2]) = (i128::MAX, [NONE; 2]);

impl Tree {
    pub fn new(vertices: usize) -> Self {
        let nodes = vertices + vertices / 2;
        Self {
            clock: 0,
            label: vec![Label::Free; nodes],
            since: vec![0; nodes],
            stamp: vec![0; nodes],
            stamps: 0,
            reached: vec![i128::MAX; nodes],
            touched: Vec::new(),
            events: BinaryHeap::new(),
            end: NEVER,
        }
    }

    pub fn reset(&mut self) {
        self.clock = 0;
        self.stamps = 0;
        self.events.clear();
        self.end = NEVER;
    }

    pub fn set_label(&mut self, node: NodeId, label: Label) {
        self.label[node as usize] = label;
        self.since[node as usize] = self.clock;
        self.stamps += 1;
        self.stamp[node as usize] = self.stamps;
        self.reached[node as usize] = i128::MAX;
        self.touched.push(node);
    }

    pub fn push(&mut self, wait: i128, event: TreeEvent) {
        let time = self.clock + wait;
        if time < self.end.0 {
            self.events.push(Reverse((time, event)));
        }
    }

    /// Announces that the edge to a free node becomes tight, unless another does before.
    pub fn announce_reach(&mut self, wait: i128, node: NodeId, [from, to]: [Vertex; 2]) {
        let time = self.clock + wait;
        let known = &mut self.reached[node as usize];
        if time < *known && time < self.end.0 {
            if *known == i128::MAX {
                self.touched.push(node);
            }
            *known = time;
            let stamp = self.stamp[node as usize];
            self.events
                .push(Reverse((time, TreeEvent::Reach(from, to, stamp))));
        }
    }

    pub fn offer_end(&mut self, wait: i128, edge: [Vertex; 2]) {
        let time = self.clock + wait;
        if time < self.end.0 {
            self.end = (time, edge);
        }
    }
}
