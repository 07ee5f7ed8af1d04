//! The steps of a search: augmenting a path, shrinking an odd cycle, expanding a blossom.

use crate::pairing::round::certificate::Vertex;

use super::Matcher;
use super::node_id::{NONE, NodeId};
use super::tree::Label;

/// The way around the cycle of a dissolved blossom to its base: the child that is next, and its label.
struct Way {
    at: usize,
    label: Label,
    forward: bool,
}

impl Matcher {
    /// Swaps matched and unmatched edges from the root to `from`, and pairs `from` with `to`.
    pub(super) fn augment(&mut self, mut from: Vertex, mut to: Vertex) {
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

    /// The inner node above an outer one and the edge over which the tree reached it.
    fn above(&self, outer: NodeId) -> Option<(NodeId, [Vertex; 2])> {
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

    /// The lowest outer node above both.
    fn junction(&self, a: NodeId, b: NodeId) -> NodeId {
        let up = |outer: NodeId| {
            self.above(outer)
                .map(|(_, [next, _])| self.blossoms.top(next))
        };
        let mut seen = std::collections::HashSet::from([a, b]);
        let (mut one, mut other) = (Some(a), Some(b));
        loop {
            one = one.and_then(up);
            if let Some(node) = one
                && !seen.insert(node)
            {
                return node;
            }
            std::mem::swap(&mut one, &mut other);
            if one.is_none() && other.is_none() {
                return a;
            }
        }
    }

    /// Nodes and edges from an outer node up to the junction, which is left out.
    fn path_up(&self, from: NodeId, junction: NodeId) -> (Vec<NodeId>, Vec<[Vertex; 2]>) {
        let (mut nodes, mut links) = (Vec::new(), Vec::new());
        let mut outer = from;
        while outer != junction {
            let Some((inner, [next, entry])) = self.above(outer) else {
                break;
            };
            let base = self.blossoms.base(outer);
            nodes.extend([outer, inner]);
            links.extend([[base, self.mate[base as usize]], [entry, next]]);
            outer = self.blossoms.top(next);
        }
        (nodes, links)
    }

    pub(super) fn shrink(&mut self, a: Vertex, b: Vertex) {
        let (one, other) = (self.blossoms.top(a), self.blossoms.top(b));
        let junction = self.junction(one, other);
        let (mut down, mut down_links) = self.path_up(one, junction);
        down.reverse();
        down_links.reverse();
        let (up, up_links) = self.path_up(other, junction);
        let mut links: Vec<[Vertex; 2]> = down_links.iter().map(|&[x, y]| [y, x]).collect();
        links.push([a, b]);
        links.extend(up_links);
        let cycle: Vec<NodeId> = [junction].into_iter().chain(down).chain(up).collect();
        let mut risen = Vec::new();
        for &node in &cycle {
            if self.tree.label[node as usize] == Label::Outer {
                self.update_depth(node);
            } else {
                self.write_drift(node);
                self.raise_potentials(node, -self.tree.clock);
                risen.extend_from_slice(self.blossoms.vertices_in(node));
            }
        }
        let Some(blossom) = self.blossoms.shrink(cycle, links) else {
            return;
        };
        self.tree.set_label(blossom, Label::Outer);
        for vertex in risen {
            self.announce_edges(vertex);
        }
    }

    /// Dissolves an inner blossom whose depth is used up: what lies on the way from where the tree
    /// reached it to its base stays in the tree.
    pub(super) fn expand(&mut self, blossom: NodeId) {
        let label = self.tree.label[blossom as usize];
        self.write_drift(blossom);
        self.tree.label[blossom as usize] = Label::Free;
        let (cycle, links) = self.blossoms.expand(blossom);
        let mut way = Way {
            at: 0,
            label,
            forward: false,
        };
        if let Label::Inner([_, entry]) | Label::Removed([entry, _]) = label {
            way.at = self.blossoms.position(&cycle, entry);
            way.forward = way.at % 2 == 1;
        }
        if let Label::Removed([a, b]) = label
            && self.blossoms.top(a) != self.blossoms.top(b)
        {
            (self.mate[a as usize], self.mate[b as usize]) = (NONE, NONE);
            way.label = Label::Outer;
            way.forward = !way.forward;
        }
        self.label_path(way, &cycle, &links);
    }

    /// Takes the children on the way to the base into the tree and lets the others go.
    fn label_path(&mut self, mut way: Way, cycle: &[NodeId], links: &[[Vertex; 2]]) {
        let mut left = vec![true; cycle.len()];
        let mut outer = Vec::new();
        loop {
            left[way.at] = false;
            let (node, back) = (cycle[way.at], (way.at + cycle.len() - 1) % cycle.len());
            if way.label == Label::Outer {
                self.label(node, Label::Outer);
                outer.push(node);
                let [next, here] = links[back];
                way.label = Label::Inner(if way.forward {
                    links[way.at]
                } else {
                    [here, next]
                });
            } else {
                self.label_inner(node, way.label);
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
        for node in outer {
            self.scan(node);
        }
        for (&node, _) in cycle.iter().zip(left).filter(|(_, left)| *left) {
            self.rescan_free(node);
        }
    }

    /// Announces when a node that left the tree is reached again.
    fn rescan_free(&mut self, node: NodeId) {
        self.label(node, Label::Free);
        let is_exposed = self.is_exposed(node);
        for &to in self.blossoms.vertices_in(node) {
            let own = self.potential[to as usize];
            for (from, cost) in self.graph.edges(to) {
                let other = self.blossoms.top(from);
                if self.tree.label[other as usize] == Label::Outer {
                    let slack = cost - own - self.potential[from as usize] - self.drift(other);
                    if is_exposed {
                        self.tree.offer_end(slack, [from, to]);
                    } else {
                        self.tree.announce_reach(slack, node, [from, to]);
                    }
                }
            }
        }
    }
}
