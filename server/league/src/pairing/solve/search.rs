//! One alternating tree, from an unmatched place to the nearest other one.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::blossom::Item;
use super::{Matcher, NONE, OddSets};
use crate::pairing::certificate::Place;

/// Where an outermost item stands in the tree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Label {
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
type Turn = u32;

/// What happens next, in the order it is preferred among equals.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Event {
    /// The edge from an outer place to one whose item has borne this label becomes tight.
    Reach(Place, Place, Turn),
    /// The depth of an inner blossom that has borne this label becomes zero.
    Expand(Item, Turn),
    /// The edge between two outer places becomes tight.
    Meet(Place, Place),
}

/// The way around the cycle of a dissolved blossom to its base: the child that is next, and its label.
struct Way {
    at: usize,
    label: Label,
    forward: bool,
}

/// The tree of the search under way.
#[derive(Clone, Debug)]
pub struct Tree {
    clock: i128,
    label: Vec<Label>,
    since: Vec<i128>,
    turn: Vec<Turn>,
    turns: Turn,
    /// When each free item is reached, so far as is announced.
    reached: Vec<i128>,
    touched: Vec<Item>,
    events: BinaryHeap<Reverse<(i128, Event)>>,
    /// When the tree reaches an unmatched item, so far as is known, and over which edge: nothing
    /// later need be known.
    end: (i128, [Place; 2]),
}

/// No edge ends the tree.
const NEVER: (i128, [Place; 2]) = (i128::MAX, [NONE; 2]);

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

    fn begin(&mut self) {
        self.clock = 0;
        self.turns = 0;
        self.events.clear();
        self.end = NEVER;
    }

    fn mark(&mut self, item: Item, label: Label) {
        self.label[item as usize] = label;
        self.since[item as usize] = self.clock;
        self.turns += 1;
        self.turn[item as usize] = self.turns;
        self.reached[item as usize] = i128::MAX;
        self.touched.push(item);
    }

    fn push(&mut self, wait: i128, event: Event) {
        let time = self.clock + wait;
        if time < self.end.0 {
            self.events.push(Reverse((time, event)));
        }
    }

    /// Announces that the edge to a free item becomes tight, unless another does before.
    fn announce_reach(&mut self, wait: i128, item: Item, [from, to]: [Place; 2]) {
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

    fn end(&mut self, wait: i128, edge: [Place; 2]) {
        let time = self.clock + wait;
        if time < self.end.0 {
            self.end = (time, edge);
        }
    }
}

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

    fn label(&mut self, item: Item, label: Label) {
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
    fn drift(&self, item: Item) -> i128 {
        match self.tree.label[item as usize] {
            Label::Outer => self.tree.clock,
            Label::Inner(_) | Label::Torn(_) => self.tree.since[item as usize] - self.tree.clock,
            Label::Free | Label::Frozen => 0,
        }
    }

    /// Writes the drift of an outermost item into its duals.
    fn commit(&mut self, item: Item) {
        self.lift(item, self.drift(item));
        self.deepen(item);
        self.tree.since[item as usize] = self.tree.clock;
    }

    /// Raises what is written of the potentials of an outermost item.
    fn lift(&mut self, item: Item, by: i128) {
        if by != 0 {
            for &place in self.blossoms.crowd(item) {
                self.potential[place as usize] += by;
                self.moved[place as usize] = true;
            }
        }
    }

    /// Writes how the depth of an outermost blossom changed since it was labelled.
    fn deepen(&mut self, item: Item) {
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
    fn scan(&mut self, item: Item) {
        for at in 0..self.blossoms.crowd(item).len() {
            self.announce(self.blossoms.crowd(item)[at]);
        }
    }

    fn announce(&mut self, from: Place) {
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

    fn is_exposed(&self, item: Item) -> bool {
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
    fn take_down(&mut self, item: Item, label: Label) {
        self.label(item, label);
        if self.blossoms.is_blossom(item) {
            let turn = self.tree.turn[item as usize];
            let wait = self.blossoms.depth[item as usize] / 2;
            self.tree.push(wait, Event::Expand(item, turn));
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

    /// The inner item above an outer one and the edge over which the tree reached it.
    fn above(&self, outer: Item) -> Option<(Item, [Place; 2])> {
        let partner = self.mate[self.blossoms.base(outer) as usize];
        if partner == NONE {
            return None;
        }
        let inner = self.blossoms.top(partner);
        match self.tree.label[inner as usize] {
            Label::Inner(entry) => Some((inner, entry)),
            _ => None,
        }
    }

    /// The lowest outer item above both.
    fn junction(&self, a: Item, b: Item) -> Item {
        let up = |outer: Item| {
            self.above(outer)
                .map(|(_, [next, _])| self.blossoms.top(next))
        };
        let mut seen = std::collections::HashSet::from([a, b]);
        let (mut one, mut other) = (Some(a), Some(b));
        loop {
            one = one.and_then(up);
            if let Some(item) = one
                && !seen.insert(item)
            {
                return item;
            }
            std::mem::swap(&mut one, &mut other);
            if one.is_none() && other.is_none() {
                return a;
            }
        }
    }

    /// Items and edges from an outer item up to the junction, which is left out.
    fn path_up(&self, from: Item, junction: Item) -> (Vec<Item>, Vec<[Place; 2]>) {
        let (mut items, mut links) = (Vec::new(), Vec::new());
        let mut outer = from;
        while outer != junction {
            let Some((inner, [next, entry])) = self.above(outer) else {
                break;
            };
            let base = self.blossoms.base(outer);
            items.extend([outer, inner]);
            links.extend([[base, self.mate[base as usize]], [entry, next]]);
            outer = self.blossoms.top(next);
        }
        (items, links)
    }

    fn shrink(&mut self, a: Place, b: Place) {
        let (one, other) = (self.blossoms.top(a), self.blossoms.top(b));
        let junction = self.junction(one, other);
        let (mut down, mut down_links) = self.path_up(one, junction);
        down.reverse();
        down_links.reverse();
        let (up, up_links) = self.path_up(other, junction);
        let mut links: Vec<[Place; 2]> = down_links.iter().map(|&[x, y]| [y, x]).collect();
        links.push([a, b]);
        links.extend(up_links);
        let cycle: Vec<Item> = [junction].into_iter().chain(down).chain(up).collect();
        let mut risen = Vec::new();
        for &item in &cycle {
            if self.tree.label[item as usize] == Label::Outer {
                self.deepen(item);
            } else {
                self.commit(item);
                self.lift(item, -self.tree.clock);
                risen.extend_from_slice(self.blossoms.crowd(item));
            }
        }
        let Some(blossom) = self.blossoms.shrink(cycle, links) else {
            return;
        };
        self.tree.mark(blossom, Label::Outer);
        for place in risen {
            self.announce(place);
        }
    }

    /// Dissolves an inner blossom whose depth is used up: what lies on the way from where the tree
    /// reached it to its base stays in the tree.
    fn expand(&mut self, blossom: Item) {
        let label = self.tree.label[blossom as usize];
        self.commit(blossom);
        self.tree.label[blossom as usize] = Label::Free;
        let (cycle, links) = self.blossoms.expand(blossom);
        let mut way = Way {
            at: 0,
            label,
            forward: false,
        };
        if let Label::Inner([_, entry]) | Label::Torn([entry, _]) = label {
            way.at = self.blossoms.position(&cycle, entry);
            way.forward = way.at % 2 == 1;
        }
        if let Label::Torn([a, b]) = label
            && self.blossoms.top(a) != self.blossoms.top(b)
        {
            (self.mate[a as usize], self.mate[b as usize]) = (NONE, NONE);
            way.label = Label::Outer;
            way.forward = !way.forward;
        }
        self.walk(way, &cycle, &links);
    }

    /// Takes the children on the way to the base into the tree and lets the others go.
    fn walk(&mut self, mut way: Way, cycle: &[Item], links: &[[Place; 2]]) {
        let mut left = vec![true; cycle.len()];
        let mut outer = Vec::new();
        loop {
            left[way.at] = false;
            let (item, back) = (cycle[way.at], (way.at + cycle.len() - 1) % cycle.len());
            if way.label == Label::Outer {
                self.label(item, Label::Outer);
                outer.push(item);
                let [next, here] = links[back];
                way.label = Label::Inner(if way.forward {
                    links[way.at]
                } else {
                    [here, next]
                });
            } else {
                self.take_down(item, way.label);
                way.label = Label::Outer;
                if way.at == 0 {
                    break;
                }
            }
            way.at = if way.forward {
                (way.at + 1) % cycle.len()
            } else {
                back
            };
        }
        for item in outer {
            self.scan(item);
        }
        for (&item, _) in cycle.iter().zip(left).filter(|(_, left)| *left) {
            self.rescan_free(item);
        }
    }

    /// Announces when an item that left the tree is reached again.
    fn rescan_free(&mut self, item: Item) {
        self.label(item, Label::Free);
        let is_exposed = self.is_exposed(item);
        for &to in self.blossoms.crowd(item) {
            let own = self.potential[to as usize];
            for (from, cost) in self.graph.edges(to) {
                let other = self.blossoms.top(from);
                if self.tree.label[other as usize] == Label::Outer {
                    let slack = cost - own - self.potential[from as usize] - self.drift(other);
                    if is_exposed {
                        self.tree.end(slack, [from, to]);
                    } else {
                        self.tree.announce_reach(slack, item, [from, to]);
                    }
                }
            }
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
