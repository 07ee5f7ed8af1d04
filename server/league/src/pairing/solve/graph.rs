//! An undirected weighted graph as adjacency arrays: one list, the edges of a vertex side by side.

use crate::pairing::round::certificate::Vertex;

/// The doubled cost of each edge, stored at both ends.
#[derive(Clone, Debug)]
pub struct Graph {
    rows: Vec<Row>,
    to: Vec<Vertex>,
    cost: Vec<i128>,
}

/// Where the edges of a vertex lie, how many they are, and for how many there is room.
#[derive(Clone, Copy, Debug)]
struct Row {
    from: usize,
    len: u32,
    room: u32,
}

impl Graph {
    /// The graph of these edges; one that is named twice counts once.
    pub fn from_edges(vertices: usize, edges: &[(Vertex, Vertex, i128)]) -> Self {
        let mut degrees = vec![0; vertices];
        for &(a, b, _) in edges {
            degrees[a as usize] += 1;
            degrees[b as usize] += 1;
        }
        let mut graph = Self::with_room(degrees.into_iter());
        for &(a, b, cost) in edges {
            if !graph.has_edge(a, b) {
                graph.add_edge(a, b, cost);
            }
        }
        graph
    }

    /// The graph of all pairs that have a cost.
    pub fn complete(vertices: usize, cost: impl Fn(usize, usize) -> Option<i128>) -> Self {
        let room = vertices.saturating_sub(1) as u32;
        let mut graph = Self::with_room((0..vertices).map(|_| room));
        for a in 0..vertices {
            for b in a + 1..vertices {
                if let Some(cost) = cost(a, b) {
                    graph.add_edge(a as Vertex, b as Vertex, cost);
                }
            }
        }
        graph
    }

    /// No edges, with room for so many at each vertex.
    fn with_room(rooms: impl Iterator<Item = u32>) -> Self {
        let mut end = 0;
        let row = |room: u32| {
            let from = end;
            end += room as usize;
            Row { from, len: 0, room }
        };
        Self {
            rows: rooms.map(row).collect(),
            to: vec![0; end],
            cost: vec![0; end],
        }
    }

    /// Adds an edge. Two edges between the same vertices are the caller's mistake.
    pub fn add_edge(&mut self, a: Vertex, b: Vertex, cost: i128) {
        self.push_half_edge(a, b, 2 * cost);
        self.push_half_edge(b, a, 2 * cost);
    }

    fn push_half_edge(&mut self, from: Vertex, to: Vertex, cost: i128) {
        if self.rows[from as usize].len == self.rows[from as usize].room {
            self.grow_row(from);
        }
        let row = &mut self.rows[from as usize];
        let at = row.from + row.len as usize;
        row.len += 1;
        (self.to[at], self.cost[at]) = (to, cost);
    }

    /// Moves the edges of a vertex to the end, where there is room for as many again.
    fn grow_row(&mut self, vertex: Vertex) {
        let row = &mut self.rows[vertex as usize];
        let old = row.from..row.from + row.len as usize;
        row.room = 2 * row.len.max(1);
        row.from = self.to.len();
        let end = row.from + row.room as usize;
        self.to.extend_from_within(old.clone());
        self.cost.extend_from_within(old);
        self.to.resize(end, 0);
        self.cost.resize(end, 0);
    }

    pub(super) fn vertex_count(&self) -> usize {
        self.rows.len()
    }

    /// The edges of a vertex: the other end and the doubled cost.
    pub(super) fn edges(&self, vertex: Vertex) -> impl Iterator<Item = (Vertex, i128)> + '_ {
        let row = self.rows[vertex as usize];
        let lies = row.from..row.from + row.len as usize;
        let costs = self.cost[lies.clone()].iter();
        self.to[lies].iter().copied().zip(costs.copied())
    }

    /// Whether there is an edge between these vertices; the one with fewer edges is searched.
    fn has_edge(&self, a: Vertex, b: Vertex) -> bool {
        let degree = |vertex: Vertex| self.rows[vertex as usize].len;
        let (few, other) = if degree(a) < degree(b) {
            (a, b)
        } else {
            (b, a)
        };
        self.edges(few).any(|(to, _)| to == other)
    }

    /// Takes an edge away; false when there was none.
    pub(super) fn remove_edge(&mut self, a: Vertex, b: Vertex) -> bool {
        self.remove_half_edge(a, b) && self.remove_half_edge(b, a)
    }

    fn remove_half_edge(&mut self, from: Vertex, to: Vertex) -> bool {
        let Some(at) = self.edges(from).position(|(other, _)| other == to) else {
            return false;
        };
        let row = &mut self.rows[from as usize];
        row.len -= 1;
        let (at, last) = (row.from + at, row.from + row.len as usize);
        self.to.swap(at, last);
        self.cost.swap(at, last);
        true
    }
}
