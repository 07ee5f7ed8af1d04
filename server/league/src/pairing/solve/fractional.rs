//! The optimum with half pairs allowed: duals that are nearly final before any blossom is made.
//!
//! Where a tree meets itself its odd cycle is paired in halves instead of being shrunk (Balinski
//! 1965; the use as a start is from memory). In the end each half cycle keeps its whole pairs and
//! leaves one place for the search proper.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use crate::pairing::round::certificate::Place;

use super::Matcher;
use super::node_id::NONE;

#[derive(Clone, Copy, PartialEq, Eq)]
enum Label {
    Free,
    Outer,
    Inner(Place),
}

/// Trees over plain places and half cycles.
struct Halves<'a> {
    matcher: &'a mut Matcher,
    /// Next place around a half cycle.
    around: Vec<Place>,
    label: Vec<Label>,
    since: Vec<i128>,
    /// When each free place is reached, so far as is known.
    reached: Vec<i128>,
    touched: Vec<Place>,
    clock: i128,
    /// When the edge from an outer place to a free one becomes tight.
    events: BinaryHeap<Reverse<(i128, Place, Place)>>,
    /// When the tree ends, and over which edge: nothing later need be known.
    end: (i128, [Place; 2]),
}

/// No edge ends the tree.
const NEVER: (i128, [Place; 2]) = (i128::MAX, [NONE; 2]);

impl Matcher {
    /// Improves the starting duals to the fractional optimum.
    pub(super) fn halve(&mut self) {
        let places = self.mate.len();
        let mut halves = Halves {
            matcher: self,
            around: vec![NONE; places],
            label: vec![Label::Free; places],
            since: vec![0; places],
            reached: vec![i128::MAX; places],
            touched: Vec::new(),
            clock: 0,
            events: BinaryHeap::new(),
            end: NEVER,
        };
        for root in 0..places as Place {
            if halves.is_exposed(root) {
                halves.search(root);
                halves.settle();
            }
        }
        for place in 0..places as Place {
            if halves.around[place as usize] != NONE {
                halves.open_cycle(place);
            }
        }
    }
}

impl Halves<'_> {
    fn is_exposed(&self, place: Place) -> bool {
        self.matcher.mate[place as usize] == NONE && self.around[place as usize] == NONE
    }

    fn search(&mut self, root: Place) {
        self.clock = 0;
        self.events.clear();
        self.end = NEVER;
        self.take(root, Label::Outer);
        self.scan(root);
        while let Some(Reverse((time, from, to))) = self.events.pop() {
            if time >= self.end.0 {
                break;
            }
            if self.label[to as usize] == Label::Free {
                self.clock = time;
                let partner = self.matcher.mate[to as usize];
                self.take(to, Label::Inner(from));
                self.take(partner, Label::Outer);
                self.scan(partner);
            }
        }
        let (time, [from, to]) = self.end;
        if time == NEVER.0 {
            return;
        }
        self.clock = time;
        if self.label[to as usize] == Label::Outer {
            self.close_cycle(from, to);
        } else {
            self.open_cycle(to);
            self.augment(from, to);
        }
    }

    fn take(&mut self, place: Place, label: Label) {
        self.label[place as usize] = label;
        self.since[place as usize] = self.clock;
        self.touched.push(place);
    }

    fn scan(&mut self, from: Place) {
        let own = self.matcher.potential[from as usize];
        for (to, cost) in self.matcher.graph.edges(from) {
            let slack = cost - own - self.matcher.potential[to as usize];
            let (wait, ends) = match self.label[to as usize] {
                Label::Free => (slack, self.matcher.mate[to as usize] == NONE),
                Label::Outer if to != from => {
                    ((slack - (self.clock - self.since[to as usize])) / 2, true)
                }
                _ => continue,
            };
            let time = self.clock + wait;
            let known = &mut self.reached[to as usize];
            if time >= self.end.0 {
                continue;
            }
            if ends {
                self.end = (time, [from, to]);
            } else if time < *known {
                if *known == i128::MAX {
                    self.touched.push(to);
                }
                *known = time;
                self.events.push(Reverse((time, from, to)));
            }
        }
    }

    fn settle(&mut self) {
        for place in std::mem::take(&mut self.touched) {
            let at = place as usize;
            self.reached[at] = i128::MAX;
            let drift = self.clock - self.since[at];
            match std::mem::replace(&mut self.label[at], Label::Free) {
                Label::Outer => self.matcher.potential[at] += drift,
                Label::Inner(_) => self.matcher.potential[at] -= drift,
                Label::Free => {}
            }
        }
    }

    /// Pairs `from` with `to` and swaps the pairs on the way to the root.
    fn augment(&mut self, mut from: Place, mut to: Place) {
        loop {
            let old = std::mem::replace(&mut self.matcher.mate[from as usize], to);
            self.matcher.mate[to as usize] = from;
            let Label::Inner(next) = (match old {
                NONE => return,
                old => self.label[old as usize],
            }) else {
                return;
            };
            (from, to) = (next, old);
        }
    }

    /// The outer place above an outer one, and the inner one between.
    fn above(&self, outer: Place) -> Option<(Place, Place)> {
        let inner = self.matcher.mate[outer as usize];
        match self.label.get(inner as usize) {
            Some(&Label::Inner(next)) => Some((inner, next)),
            _ => None,
        }
    }

    /// Two outer places met: their paths up to where they join become a half cycle.
    fn close_cycle(&mut self, a: Place, b: Place) {
        let path = |start: Place| {
            let mut path = vec![start];
            let mut outer = start;
            while let Some((inner, next)) = self.above(outer) {
                path.extend([inner, next]);
                outer = next;
            }
            path
        };
        let (mut one, mut other) = (path(a), path(b));
        let mut junction = a;
        while let (Some(&x), Some(&y)) = (one.last(), other.last()) {
            if x != y {
                break;
            }
            junction = x;
            one.pop();
            other.pop();
        }
        if let Some((inner, next)) = self.above(junction) {
            self.augment(next, inner);
        }
        one.push(junction);
        other.reverse();
        let cycle: Vec<Place> = one.into_iter().chain(other).collect();
        for (at, &place) in cycle.iter().enumerate() {
            self.matcher.mate[place as usize] = NONE;
            self.around[place as usize] = cycle[(at + 1) % cycle.len()];
        }
    }

    /// Pairs a half cycle in whole pairs and leaves one place out.
    fn open_cycle(&mut self, out: Place) {
        let mut place = std::mem::replace(&mut self.around[out as usize], NONE);
        while place != NONE && place != out {
            let next = std::mem::replace(&mut self.around[place as usize], NONE);
            self.matcher.mate[place as usize] = next;
            self.matcher.mate[next as usize] = place;
            place = std::mem::replace(&mut self.around[next as usize], NONE);
        }
    }
}
