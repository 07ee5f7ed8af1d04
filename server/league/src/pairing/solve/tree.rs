//! The alternating tree of the search under way, and what its clock has moved.
//!
//! While a search runs, the potential of a place is the stored one plus the drift of its outermost
//! item; the stored ones are written when the search ends, or when an item joins a larger one.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::Matcher;
use super::blossom::Item;
use crate::pairing::certificate::Place;

/// Where an outermost item stands in the tree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Label {
    /// Not reached.
    Free,
    /// At even distance from the root; its potentials rise with the clock.
    Outer,
    /// At odd distance, reached over this edge from an outer place; its potentials fall.
    Inner([Place; 2]),
    /// Part of a tree that cannot be augmented: as if it were not there.
    Frozen,
}

/// What happens next, in the order it is preferred among equals.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Event {
    /// The edge from an outer place to one free since that moment becomes tight.
    Reach(Place, Place, i128),
    /// The depth of an inner blossom, labelled at this moment, becomes zero.
    Expand(Item, i128),
    /// The edge between two outer places becomes tight.
    Meet(Place, Place),
}

/// The tree of the search under way.
#[derive(Clone, Debug)]
pub struct Tree {
    pub(super) clock: i128,
    pub(super) label: Vec<Label>,
    pub(super) since: Vec<i128>,
    /// What the potentials of an outermost item's places still lack of the moves before `since`:
    /// written once when the search ends, or when the item joins a larger one.
    pub(super) shift: Vec<i128>,
    pub(super) touched: Vec<Item>,
    /// Number of the latest walk that came past an item.
    pub(super) passed: Vec<u32>,
    pub(super) walks: u32,
    pub(super) events: BinaryHeap<Reverse<(i128, Event)>>,
}

impl Tree {
    /// No tree yet.
    pub fn new(places: usize) -> Self {
        let items = places + places / 2;
        Self {
            clock: 0,
            label: vec![Label::Free; items],
            since: vec![0; items],
            shift: vec![0; items],
            touched: Vec::new(),
            passed: vec![0; items],
            walks: 0,
            events: BinaryHeap::new(),
        }
    }

    /// An event after so much of the clock.
    pub(super) fn push(&mut self, wait: i128, event: Event) {
        self.events.push(Reverse((self.clock + wait, event)));
    }
}

impl Matcher {
    /// Gives an outermost item its label from now on; its drift so far must be committed.
    pub(super) fn label(&mut self, item: Item, label: Label) {
        self.tree.label[item as usize] = label;
        self.tree.since[item as usize] = self.tree.clock;
        self.tree.touched.push(item);
    }

    /// How far the clock has moved the potentials of an outermost item since the search began.
    pub(super) fn drift(&self, item: Item) -> i128 {
        let passed = self.tree.clock - self.tree.since[item as usize];
        let before = self.tree.shift[item as usize];
        match self.tree.label[item as usize] {
            Label::Outer => before + passed,
            Label::Inner(_) => before - passed,
            Label::Free | Label::Frozen => before,
        }
    }

    /// Notes the drift of an outermost item before its label changes.
    pub(super) fn commit(&mut self, item: Item) {
        let (at, drift) = (item as usize, self.drift(item));
        if self.blossoms.is_blossom(item) {
            self.blossoms.depth[at] += 2 * (drift - self.tree.shift[at]);
        }
        self.tree.shift[at] = drift;
        self.tree.since[at] = self.tree.clock;
    }

    /// Moves the potentials of an outermost item's places.
    pub(super) fn write(&mut self, item: Item, shift: i128) {
        if shift != 0 {
            for &place in self.blossoms.united(item) {
                self.potential[place as usize] += shift;
            }
        }
    }

    /// Ends the search: writes all drift, and leaves standing items of the tree with a label.
    pub(super) fn settle(&mut self, left: Label) {
        for item in std::mem::take(&mut self.tree.touched) {
            let standing = self.blossoms.is_top(item);
            if standing {
                self.commit(item);
                self.write(item, self.tree.shift[item as usize]);
            }
            let reached = self.tree.label[item as usize] != Label::Free;
            let label = if standing && reached {
                left
            } else {
                Label::Free
            };
            self.tree.label[item as usize] = label;
            self.tree.since[item as usize] = 0;
            self.tree.shift[item as usize] = 0;
        }
    }
}
