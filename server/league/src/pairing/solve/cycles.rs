//! Odd cycles of the tree: where two outer items meet one is shrunk into a blossom, and an inner
//! blossom whose depth is used up is expanded again.

use super::blossom::Item;
use super::tree::{Event, Label};
use super::{Matcher, NONE};
use crate::pairing::certificate::Place;

impl Matcher {
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
    fn junction(&mut self, a: Item, b: Item) -> Item {
        self.tree.walks += 1;
        let (mut one, mut other) = (Some(a), Some(b));
        while let Some(item) = one {
            if std::mem::replace(&mut self.tree.passed[item as usize], self.tree.walks)
                == self.tree.walks
            {
                return item;
            }
            let next = self
                .above(item)
                .map(|(_, [next, _])| self.blossoms.top(next));
            one = other;
            other = next;
            if one.is_none() {
                std::mem::swap(&mut one, &mut other);
            }
        }
        a
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

    /// Makes a blossom of the cycle that this edge between two outer items closes.
    pub(super) fn shrink(&mut self, a: Place, b: Place) {
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
            self.commit(item);
            if self.tree.label[item as usize] != Label::Outer {
                risen.push(item);
            }
        }
        let shift = self.tree.shift[self.blossoms.largest(&cycle) as usize];
        for &item in &cycle {
            self.write(item, self.tree.shift[item as usize] - shift);
        }
        let Some(blossom) = self.blossoms.shrink(cycle, links) else {
            return;
        };
        self.tree.shift[blossom as usize] = shift;
        self.label(blossom, Label::Outer);
        for item in risen {
            self.scan(item);
        }
    }

    /// Takes an inner blossom without depth apart: its path to the entry stays in the tree.
    pub(super) fn expand(&mut self, blossom: Item) {
        let Label::Inner([from, entry]) = self.tree.label[blossom as usize] else {
            return;
        };
        self.commit(blossom);
        self.tree.label[blossom as usize] = Label::Free;
        let shift = std::mem::take(&mut self.tree.shift[blossom as usize]);
        let (cycle, links) = self.blossoms.expand(blossom);
        for &item in &cycle {
            self.tree.shift[item as usize] = shift;
        }
        let length = cycle.len();
        let start = self.blossoms.position(&cycle, entry);
        let steps = if start.is_multiple_of(2) {
            start
        } else {
            length - start
        };
        let forward = start % 2 == 1;
        let mut on_path = vec![false; length];
        let mut way_in = [from, entry];
        let mut outer = Vec::new();
        for step in 0..=steps {
            let at = if forward {
                (start + step) % length
            } else {
                start - step
            };
            on_path[at] = true;
            if step % 2 == 0 {
                self.take_inner(cycle[at], way_in);
            } else {
                self.label(cycle[at], Label::Outer);
                outer.push(cycle[at]);
                way_in = if forward {
                    links[at]
                } else {
                    let [next, here] = links[at - 1];
                    [here, next]
                };
            }
        }
        for item in outer {
            self.scan(item);
        }
        for (item, _) in cycle.iter().zip(on_path).filter(|(_, reached)| !reached) {
            self.rescan_free(*item);
        }
    }

    /// Announces when an item that left the tree is reached again.
    fn rescan_free(&mut self, item: Item) {
        let since = self.tree.clock;
        self.label(item, Label::Free);
        for to in self.blossoms.members(item) {
            let own = self.potential[to as usize] + self.drift(item);
            for &(from, cost) in &self.graph.edges[to as usize] {
                let other = self.blossoms.top(from);
                if self.tree.label[other as usize] == Label::Outer {
                    let slack = cost - own - self.potential[from as usize] - self.drift(other);
                    self.tree.push(slack, Event::Reach(from, to, since));
                }
            }
        }
    }
}
