//! Blossoms: nested odd cycles of tight edges, each of which acts as one vertex.

use crate::pairing::round::certificate::Vertex;

use super::laminar::LaminarFamily;
use super::node_id::{NONE, NodeId};

/// All blossoms and which is inside which.
#[derive(Clone, Debug)]
pub struct Blossoms {
    vertices: usize,
    /// The group of each vertex: all vertices with the same outermost node (a union-find set). A group
    /// has the number of a vertex of its largest part, and the smaller parts join it, so that deep
    /// nesting is not walked again at each level.
    group: Vec<Vertex>,
    /// Outermost node of each group.
    top: Vec<NodeId>,
    /// Vertices of each group that has several. Those of the largest child of a blossom come first, so
    /// that they need not be collected again when it is dissolved.
    group_members: Vec<Vec<Vertex>>,
    all: Vec<Vertex>,
    /// The vertex of each node that is matched outwards, or to nothing.
    base: Vec<Vertex>,
    parent: Vec<NodeId>,
    /// The dual value of each blossom; even.
    pub depth: Vec<i128>,
    /// The child of each blossom that has the most vertices.
    largest: Vec<NodeId>,
    /// Around the cycle, the one with the base first.
    children: Vec<Vec<NodeId>>,
    /// Edge from each child to the next, each end inside its child.
    cycle_edges: Vec<Vec<[Vertex; 2]>>,
    free_ids: Vec<NodeId>,
}

impl Blossoms {
    /// Vertices only.
    pub fn new(vertices: usize) -> Self {
        let nodes = vertices + vertices / 2;
        let all: Vec<NodeId> = (0..nodes as NodeId).collect();
        Self {
            vertices,
            group: all[..vertices].to_vec(),
            group_members: vec![Vec::new(); vertices],
            top: all[..vertices].to_vec(),
            base: all[..vertices]
                .iter()
                .copied()
                .chain((vertices..nodes).map(|_| NONE))
                .collect(),
            parent: vec![NONE; nodes],
            depth: vec![0; nodes],
            largest: vec![NONE; nodes],
            children: vec![Vec::new(); nodes],
            cycle_edges: vec![Vec::new(); nodes],
            free_ids: all[vertices..].iter().rev().copied().collect(),
            all: all[..vertices].to_vec(),
        }
    }

    pub fn top(&self, vertex: Vertex) -> NodeId {
        self.top[self.group[vertex as usize] as usize]
    }

    /// Vertices inside an outermost node.
    pub fn vertices_in(&self, top: NodeId) -> &[Vertex] {
        if self.is_blossom(top) {
            &self.group_members[self.group[self.base[top as usize] as usize] as usize]
        } else {
            &self.all[top as usize..=top as usize]
        }
    }

    pub fn base(&self, node: NodeId) -> Vertex {
        self.base[node as usize]
    }

    pub fn is_blossom(&self, node: NodeId) -> bool {
        node as usize >= self.vertices
    }

    pub fn is_top(&self, node: NodeId) -> bool {
        self.parent[node as usize] == NONE && self.base[node as usize] != NONE
    }

    /// The child of a blossom that holds a vertex.
    fn child_of(&self, blossom: NodeId, vertex: Vertex) -> NodeId {
        let mut node = vertex;
        while self.parent[node as usize] != blossom {
            node = self.parent[node as usize];
        }
        node
    }

    /// The blossoms around a vertex, innermost first.
    fn enclosing(&self, vertex: Vertex) -> Vec<NodeId> {
        let outwards = |&node: &NodeId| {
            let around = self.parent[node as usize];
            (around != NONE).then_some(around)
        };
        std::iter::successors(outwards(&vertex), outwards).collect()
    }

    /// The blossoms that hold both vertices, innermost first.
    fn common(&self, a: Vertex, b: Vertex) -> Vec<NodeId> {
        let (mut one, other) = (self.enclosing(a), self.enclosing(b));
        let inwards = one.iter().rev().zip(other.iter().rev());
        let both = inwards.take_while(|(one, other)| one == other).count();
        one.split_off(one.len() - both)
    }

    /// Whether this edge belongs to the cycle of a blossom.
    pub fn is_cycle_edge(&self, a: Vertex, b: Vertex) -> bool {
        let innermost = self.common(a, b).into_iter().next();
        let mut links = innermost
            .iter()
            .flat_map(|&node| &self.cycle_edges[node as usize]);
        links.any(|&link| link == [a, b] || link == [b, a])
    }

    /// The depth of all blossoms that hold both vertices.
    pub fn shared_depth(&self, a: Vertex, b: Vertex) -> i128 {
        let both = self.common(a, b).into_iter();
        both.map(|node| self.depth[node as usize]).sum()
    }

    /// Vertices inside a node, first those of its largest child, and so on inwards.
    fn members(&self, node: NodeId) -> Vec<Vertex> {
        let mut members = Vec::new();
        let mut open = vec![node];
        while let Some(node) = open.pop() {
            if self.is_blossom(node) {
                let largest = self.largest[node as usize];
                let children = self.children[node as usize].iter().copied();
                open.extend(children.filter(|&child| child != largest));
                open.push(largest);
            } else {
                members.push(node);
            }
        }
        members
    }

    /// The nesting of the blossoms, for queries.
    pub fn laminar_family(&self) -> LaminarFamily {
        let mut order: Vec<NodeId> = (0..self.base.len() as NodeId)
            .filter(|&node| self.is_top(node))
            .collect();
        let mut at = 0;
        while at < order.len() {
            order.extend(&self.children[order[at] as usize]);
            at += 1;
        }
        LaminarFamily::new(&order, &self.parent, &self.depth)
    }

    /// Every blossom with a positive depth, as a set of vertices.
    pub fn deep_sets(&self) -> Vec<(Vec<Vertex>, i128)> {
        let deep = (self.vertices..self.base.len()).filter(|&node| self.depth[node] > 0);
        deep.map(|node| (self.members(node as NodeId), self.depth[node]))
            .collect()
    }

    /// Makes a blossom of a cycle of outermost nodes, the base's first, and returns it.
    pub fn shrink(&mut self, cycle: Vec<NodeId>, links: Vec<[Vertex; 2]>) -> Option<NodeId> {
        let blossom = self.free_ids.pop()?;
        let crowd_of = |node: NodeId| self.group[self.base[node as usize] as usize] as usize;
        let crowds: Vec<usize> = cycle.iter().map(|&node| crowd_of(node)).collect();
        let size = |&node: &NodeId| self.group_members[crowd_of(node)].len();
        let largest_child = cycle.iter().copied().max_by_key(size)?;
        let largest = crowd_of(largest_child);
        self.largest[blossom as usize] = largest_child;
        let mut united = std::mem::take(&mut self.group_members[largest]);
        for (&child, &crowd) in cycle.iter().zip(&crowds) {
            self.parent[child as usize] = blossom;
            if !self.is_blossom(child) {
                united.push(child);
                self.group[child as usize] = largest as Vertex;
            } else if crowd != largest {
                let joining = std::mem::take(&mut self.group_members[crowd]);
                for &vertex in &joining {
                    self.group[vertex as usize] = largest as Vertex;
                }
                united.extend(joining);
            }
        }
        self.group_members[largest] = united;
        self.top[largest] = blossom;
        self.base[blossom as usize] = self.base[cycle[0] as usize];
        self.depth[blossom as usize] = 0;
        self.children[blossom as usize] = cycle;
        self.cycle_edges[blossom as usize] = links;
        Some(blossom)
    }

    /// Dissolves an outermost blossom and returns its cycle.
    pub fn expand(&mut self, blossom: NodeId) -> (Vec<NodeId>, Vec<[Vertex; 2]>) {
        let children = std::mem::take(&mut self.children[blossom as usize]);
        let links = std::mem::take(&mut self.cycle_edges[blossom as usize]);
        let dissolved = self.group[self.base[blossom as usize] as usize];
        let largest = self.largest[blossom as usize];
        for &child in &children {
            self.parent[child as usize] = NONE;
            if child != largest {
                self.regroup(child);
            }
        }
        let gathered = children.iter().filter(|&&child| child != largest);
        let gone: usize = gathered.map(|&child| self.vertices_in(child).len()).sum();
        let is_several = self.is_blossom(largest);
        let roster = &mut self.group_members[dissolved as usize];
        roster.truncate(if is_several { roster.len() - gone } else { 0 });
        self.top[dissolved as usize] = largest;
        self.base[blossom as usize] = NONE;
        self.depth[blossom as usize] = 0;
        self.free_ids.push(blossom);
        (children, links)
    }

    /// Makes a group of the vertices of a node that has become outermost.
    fn regroup(&mut self, node: NodeId) {
        let members = self.members(node);
        let crowd = members[0];
        for &vertex in &members {
            self.group[vertex as usize] = crowd;
        }
        self.top[crowd as usize] = node;
        if self.is_blossom(node) {
            self.group_members[crowd as usize] = members;
        }
    }

    /// Rearranges the pairs inside a node so that `vertex` becomes its base.
    pub fn rotate(&mut self, node: NodeId, vertex: Vertex, mate: &mut [Vertex]) {
        let mut open = vec![(node, vertex)];
        while let Some((node, vertex)) = open.pop() {
            if self.is_blossom(node) {
                self.rotate_cycle(node, vertex, mate, &mut open);
            }
        }
    }

    /// Turns the cycle of a blossom and leaves what is inside its children in `open`.
    fn rotate_cycle(
        &mut self,
        node: NodeId,
        vertex: Vertex,
        mate: &mut [Vertex],
        open: &mut Vec<(NodeId, Vertex)>,
    ) {
        let (at, child) = (node as usize, self.child_of(node, vertex));
        open.push((child, vertex));
        let (children, links) = (&mut self.children[at], &mut self.cycle_edges[at]);
        let from = children.iter().position(|&c| c == child).unwrap_or(0);
        let fresh = if from % 2 == 0 {
            0..from
        } else {
            from + 1..children.len()
        };
        for link in fresh.step_by(2) {
            let ([a, b], next) = (links[link], (link + 1) % children.len());
            open.extend([(children[link], a), (children[next], b)]);
            mate[a as usize] = b;
            mate[b as usize] = a;
        }
        children.rotate_left(from);
        links.rotate_left(from);
        self.base[at] = vertex;
    }

    /// The child of a dissolved blossom's cycle that now holds this vertex.
    pub fn position(&self, cycle: &[NodeId], vertex: Vertex) -> usize {
        let top = self.top(vertex);
        cycle.iter().position(|&child| child == top).unwrap_or(0)
    }
}
