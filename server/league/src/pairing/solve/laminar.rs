//! The laminar family of blossoms: shared depth of two vertices in logarithmic time.

use super::node_id::{NONE, NodeId};

/// Blossoms in each other, cut into paths that follow the largest child (the heavy paths of Sleator
/// and Tarjan 1983): from any node few paths lead outwards.
#[derive(Clone, Debug)]
pub struct LaminarFamily {
    parent: Vec<NodeId>,
    /// Outermost node of the path.
    head: Vec<NodeId>,
    /// Whoever lies around another node has the lower rank.
    rank: Vec<u32>,
    /// Depth of the node and of everything around it.
    depth: Vec<i128>,
    /// Of all odd sets around the node and itself the deepest and the innermost.
    deepest: Vec<NodeId>,
    innermost: Vec<NodeId>,
}

impl LaminarFamily {
    /// Of nodes in an order that has each after what lies around it.
    pub(super) fn new(order: &[NodeId], parent: &[NodeId], depth: &[i128]) -> Self {
        let nodes = parent.len();
        let (mut size, mut largest) = (vec![1_u32; nodes], vec![NONE; nodes]);
        for &node in order.iter().rev() {
            let around = parent[node as usize];
            if around != NONE {
                size[around as usize] += size[node as usize];
                let best = &mut largest[around as usize];
                if *best == NONE || size[*best as usize] < size[node as usize] {
                    *best = node;
                }
            }
        }
        let mut family = Self {
            parent: parent.to_vec(),
            head: (0..nodes as NodeId).collect(),
            rank: vec![0; nodes],
            depth: depth.to_vec(),
            deepest: vec![NONE; nodes],
            innermost: vec![NONE; nodes],
        };
        for (rank, &node) in (0..).zip(order) {
            let at = node as usize;
            family.rank[at] = rank;
            let around = parent[at] as usize;
            if parent[at] != NONE {
                if largest[around] == node {
                    family.head[at] = family.head[around];
                }
                family.depth[at] += family.depth[around];
                family.deepest[at] = family.deepest[around];
                family.innermost[at] = family.innermost[around];
            }
            if depth[at] > 0 {
                family.innermost[at] = node;
                let deepest = family.deepest[at];
                if deepest == NONE || depth[at] > depth[deepest as usize] {
                    family.deepest[at] = node;
                }
            }
        }
        family
    }

    /// Sum of the depths of all odd sets that hold both nodes; none holds [`NONE`].
    pub fn shared_depth(&self, a: NodeId, b: NodeId) -> i128 {
        if a == NONE || b == NONE {
            return 0;
        }
        let (mut a, mut b) = (a, b);
        loop {
            let [one, other] = [a, b].map(|node| self.head[node as usize]);
            if one == other {
                let rank = |&node: &NodeId| self.rank[node as usize];
                let outer = if rank(&a) < rank(&b) { a } else { b };
                return self.depth[outer as usize];
            }
            let inner = if self.rank[one as usize] > self.rank[other as usize] {
                (&mut a, one)
            } else {
                (&mut b, other)
            };
            let around = self.parent[inner.1 as usize];
            if around == NONE {
                return 0;
            }
            *inner.0 = around;
        }
    }

    /// The deepest odd set around a vertex.
    pub fn deepest(&self, vertex: usize) -> NodeId {
        self.deepest[vertex]
    }

    /// The innermost odd set around a vertex: two vertices share what their innermost sets share.
    pub fn innermost(&self, vertex: usize) -> NodeId {
        self.innermost[vertex]
    }
}
