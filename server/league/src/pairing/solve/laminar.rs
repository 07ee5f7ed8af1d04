//! The depth of the odd sets that two places share, in a few steps however deep they lie.

use super::node_id::{Item, NONE};

/// Blossoms in each other, cut into paths that follow the largest child (the heavy paths of Sleator
/// and Tarjan 1983): from any item few paths lead outwards.
#[derive(Clone, Debug)]
pub struct Nest {
    parent: Vec<Item>,
    /// Outermost item of the path.
    head: Vec<Item>,
    /// Whoever lies around another item has the lower rank.
    rank: Vec<u32>,
    /// Depth of the item and of everything around it.
    depth: Vec<i128>,
    /// Of all odd sets around the item and itself the deepest and the innermost.
    deepest: Vec<Item>,
    innermost: Vec<Item>,
}

impl Nest {
    /// Of items in an order that has each after what lies around it.
    pub(super) fn new(order: &[Item], parent: &[Item], depth: &[i128]) -> Self {
        let items = parent.len();
        let (mut size, mut largest) = (vec![1_u32; items], vec![NONE; items]);
        for &item in order.iter().rev() {
            let around = parent[item as usize];
            if around != NONE {
                size[around as usize] += size[item as usize];
                let best = &mut largest[around as usize];
                if *best == NONE || size[*best as usize] < size[item as usize] {
                    *best = item;
                }
            }
        }
        let mut nest = Self {
            parent: parent.to_vec(),
            head: (0..items as Item).collect(),
            rank: vec![0; items],
            depth: depth.to_vec(),
            deepest: vec![NONE; items],
            innermost: vec![NONE; items],
        };
        for (rank, &item) in (0..).zip(order) {
            let at = item as usize;
            nest.rank[at] = rank;
            let around = parent[at] as usize;
            if parent[at] != NONE {
                if largest[around] == item {
                    nest.head[at] = nest.head[around];
                }
                nest.depth[at] += nest.depth[around];
                nest.deepest[at] = nest.deepest[around];
                nest.innermost[at] = nest.innermost[around];
            }
            if depth[at] > 0 {
                nest.innermost[at] = item;
                let deepest = nest.deepest[at];
                if deepest == NONE || depth[at] > depth[deepest as usize] {
                    nest.deepest[at] = item;
                }
            }
        }
        nest
    }

    /// Sum of the depths of all odd sets that hold both items; none holds [`NONE`].
    pub fn depth(&self, a: Item, b: Item) -> i128 {
        if a == NONE || b == NONE {
            return 0;
        }
        let (mut a, mut b) = (a, b);
        loop {
            let [one, other] = [a, b].map(|item| self.head[item as usize]);
            if one == other {
                let rank = |&item: &Item| self.rank[item as usize];
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

    /// The deepest odd set around a place.
    pub fn deepest(&self, place: usize) -> Item {
        self.deepest[place]
    }

    /// The innermost odd set around a place: two places share what their innermost sets share.
    pub fn innermost(&self, place: usize) -> Item {
        self.innermost[place]
    }
}
