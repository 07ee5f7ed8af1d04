//! Fractional matching: the optimum with half-integral pairs, whose duals are nearly final.
//!
//! Where a tree meets itself its odd cycle is paired in halves instead of being shrunk (Balinski
//! 1965; the use as a start is from memory). In the end each half cycle keeps its whole pairs and
//! leaves one vertex for the search proper.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use crate::pairing::round::certificate::Vertex;

use super::Matcher;
use super::node_id::NONE;

#[derive(Clone, Copy, PartialEq, Eq)]
enum Label {
    Free,
    Outer,
    Inner(Vertex),
}

/// Trees over plain vertices and half cycles.
struct HalfIntegral<'a> {
    matcher: &'a mut Matcher,
    /// Next vertex around a half cycle.
    around: Vec<Vertex>,
    label: Vec<Label>,
    since: Vec<i128>,
    /// When each free vertex is reached, so far as is known.
    reached: Vec<i128>,
    touched: Vec<Vertex>,
    clock: i128,
    /// When the edge from an outer vertex to a free one becomes tight.
    events: BinaryHeap<Reverse<(i128, Vertex, Vertex)>>,
    /// When the tree ends, and over which edge: nothing later need be known.
    end: (i128, [Vertex; 2]),
}

/// No edge ends the tree.
const NEVER: (i128, [Vertex; 2]) = (i128::MAX, [NONE; 2]);

impl Matcher {
    /// Improves the starting duals to the fractional optimum.
    pub(super) fn solve_fractional(&mut self) {
        let vertices = self.mate.len();
        let mut halves = HalfIntegral {
            matcher: self,
            around: vec![NONE; vertices],
            label: vec![Label::Free; vertices],
            since: vec![0; vertices],
            reached: vec![i128::MAX; vertices],
            touched: Vec::new(),
            clock: 0,
            events: BinaryHeap::new(),
            end: NEVER,
        };
        for root in 0..vertices as Vertex {
            if halves.is_exposed(root) {
                halves.search(root);
                halves.write_duals();
            }
        }
        for vertex in 0..vertices as Vertex {
            if halves.around[vertex as usize] != NONE {
                halves.open_cycle(vertex);
            }
        }
    }
}

impl HalfIntegral<'_> {
    fn is_exposed(&self, vertex: Vertex) -> bool {
        self.matcher.mate[vertex as usize] == NONE && self.around[vertex as usize] == NONE
    }

    fn search(&mut self, root: Vertex) {
        self.clock = 0;
        self.events.clear();
        self.end = NEVER;
        self.set_label(root, Label::Outer);
        self.scan(root);
        while let Some(Reverse((time, from, to))) = self.events.pop() {
            if time >= self.end.0 {
                break;
            }
            if self.label[to as usize] == Label::Free {
                self.clock = time;
                let partner = self.matcher.mate[to as usize];
                self.set_label(to, Label::Inner(from));
                self.set_label(partner, Label::Outer);
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

    fn set_label(&mut self, vertex: Vertex, label: Label) {
        self.label[vertex as usize] = label;
        self.since[vertex as usize] = self.clock;
        self.touched.push(vertex);
    }

    fn scan(&mut self, from: Vertex) {
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

    fn write_duals(&mut self) {
        for vertex in std::mem::take(&mut self.touched) {
            let at = vertex as usize;
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
    fn augment(&mut self, mut from: Vertex, mut to: Vertex) {
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

    /// The outer vertex above an outer one, and the inner one between.
    fn above(&self, outer: Vertex) -> Option<(Vertex, Vertex)> {
        let inner = self.matcher.mate[outer as usize];
        match self.label.get(inner as usize) {
            Some(&Label::Inner(next)) => Some((inner, next)),
            _ => None,
        }
    }

    /// Two outer vertices met: their paths up to where they join become a half cycle.
    fn close_cycle(&mut self, a: Vertex, b: Vertex) {
        let path = |start: Vertex| {
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
        let cycle: Vec<Vertex> = one.into_iter().chain(other).collect();
        for (at, &vertex) in cycle.iter().enumerate() {
            self.matcher.mate[vertex as usize] = NONE;
            self.around[vertex as usize] = cycle[(at + 1) % cycle.len()];
        }
    }

    /// Pairs a half cycle in whole pairs and leaves one vertex out.
    fn open_cycle(&mut self, out: Vertex) {
        let mut vertex = std::mem::replace(&mut self.around[out as usize], NONE);
        while vertex != NONE && vertex != out {
            let next = std::mem::replace(&mut self.around[vertex as usize], NONE);
            self.matcher.mate[vertex as usize] = next;
            self.matcher.mate[next as usize] = vertex;
            vertex = std::mem::replace(&mut self.around[next as usize], NONE);
        }
    }
}
