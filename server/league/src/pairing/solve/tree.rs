//! The alternating tree of a search and what is announced to it.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use crate::pairing::round::certificate::Place;

use super::node_id::{Item, NONE};

/// Where an outermost item stands in the tree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Label {
    /// Not reached.
    Free,
    /// At even distance from the root; its potentials rise with the clock and are kept less the
    /// clock, so that nothing is written when outer items unite.
    Outer,
    /// At odd distance, reached over this edge from an outer place; its potentials fall.
    Inner([Place; 2]),
    /// Holds both of a pair that is taken away, and is dissolved as if it had been reached at the
    /// first of them.
    Torn([Place; 2]),
    /// Part of a tree that cannot be augmented: as if it were not there.
    Frozen,
}

/// When in a search an item was labelled: no two labels have the same turn, so that nothing announced
/// for a blossom is taken for one of its children. 0 for an item that the search has not come to.
pub type Turn = u32;

/// What happens next, in the order it is preferred among equals.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Event {
    /// The edge from an outer place to one whose item has borne this label becomes tight.
    Reach(Place, Place, Turn),
    /// The depth of an inner blossom that has borne this label becomes zero.
    Expand(Item, Turn),
    /// The edge between two outer places becomes tight.
    Meet(Place, Place),
}

/// The tree of the search under way.
#[derive(Clone, Debug)]
pub struct Tree {
    pub clock: i128,
    pub label: Vec<Label>,
    pub since: Vec<i128>,
    pub turn: Vec<Turn>,
    turns: Turn,
    /// When each free item is reached, so far as is announced.
    pub reached: Vec<i128>,
    pub touched: Vec<Item>,
    pub events: BinaryHeap<Reverse<(i128, Event)>>,
    /// When the tree reaches an unmatched item, so far as is known, and over which edge: nothing
    /// later need be known.
    pub end: (i128, [Place; 2]),
}

/// No edge ends the tree.
pub const NEVER: (i128, [Place; 2]) = (i128::MAX, [NONE; 2]);

impl Tree {
    pub fn new(places: usize) -> Self {
        let items = places + places / 2;
        Self {
            clock: 0,
            label: vec![Label::Free; items],
            since: vec![0; items],
            turn: vec![0; items],
            turns: 0,
            reached: vec![i128::MAX; items],
            touched: Vec::new(),
            events: BinaryHeap::new(),
            end: NEVER,
        }
    }

    pub fn begin(&mut self) {
        self.clock = 0;
        self.turns = 0;
        self.events.clear();
        self.end = NEVER;
    }

    pub fn mark(&mut self, item: Item, label: Label) {
        self.label[item as usize] = label;
        self.since[item as usize] = self.clock;
        self.turns += 1;
        self.turn[item as usize] = self.turns;
        self.reached[item as usize] = i128::MAX;
        self.touched.push(item);
    }

    pub fn push(&mut self, wait: i128, event: Event) {
        let time = self.clock + wait;
        if time < self.end.0 {
            self.events.push(Reverse((time, event)));
        }
    }

    /// Announces that the edge to a free item becomes tight, unless another does before.
    pub fn announce_reach(&mut self, wait: i128, item: Item, [from, to]: [Place; 2]) {
        let time = self.clock + wait;
        let known = &mut self.reached[item as usize];
        if time < *known && time < self.end.0 {
            if *known == i128::MAX {
                self.touched.push(item);
            }
            *known = time;
            let turn = self.turn[item as usize];
            self.events
                .push(Reverse((time, Event::Reach(from, to, turn))));
        }
    }

    pub fn end(&mut self, wait: i128, edge: [Place; 2]) {
        let time = self.clock + wait;
        if time < self.end.0 {
            self.end = (time, edge);
        }
    }
}
